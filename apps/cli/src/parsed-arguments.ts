import { type ParseArgsConfig, parseArgs } from 'node:util';
import { InputError } from '@bonewright/fault';

/** Options and plain arguments of a command; an unknown or unfinished option is refused with how to use it. */
export function parsedArguments<const O extends NonNullable<ParseArgsConfig['options']>>(
  args: readonly string[],
  options: O,
  usage: string,
) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true });
  } catch (error) {
    throw new InputError(error instanceof Error ? error.message : String(error), '', `use: ${usage}`);
  }
}

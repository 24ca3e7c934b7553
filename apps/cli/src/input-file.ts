/** A command's JSON input file: its path, read and checked, every fault naming the file. */
import { basename } from 'node:path';
import { InputError } from '@bonewright/fault';
import { readBytes, userPath } from './files.ts';
import { readJson } from './read-json.ts';

/** The one file argument of a command, as an absolute path. */
export function fileArgument(args: readonly string[], usage: string): string {
  const [path, ...more] = args;
  if (!path || path.startsWith('-')) throw new InputError('no input file was given', '', `use: ${usage}`);
  if (more.length > 0) throw new InputError(`"${more.join(' ')}" is too much`, '', `use: ${usage}`);
  return userPath(path);
}

/** Reads the JSON file and checks it with `check`; bad input names the file and the place in it. */
export function readInput<T>(path: string, check: (value: unknown) => T): T {
  return naming(path, () => check(readJson(readBytes(path))));
}

/** Runs `work`; bad input it finds is told with the file's name before the place. */
export function naming<T>(path: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw named(error, path);
  }
}

/** As `naming`, for work that takes time. */
export async function namingLater<T>(path: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw named(error, path);
  }
}

function named(error: unknown, path: string): unknown {
  if (!(error instanceof InputError) || error.path.includes(basename(path))) return error;
  return new InputError(error.what, [basename(path), error.path].filter(Boolean).join(' '), error.hint);
}

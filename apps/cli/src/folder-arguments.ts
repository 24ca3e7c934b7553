/** Arguments of the commands on records: `--data DIR`, the database, and a file where one is asked for. */
import { InputError } from '@bonewright/fault';
import { userPath } from './files.ts';
import { parsedArguments } from './parsed-arguments.ts';

const OPTIONS = {
  data: { type: 'string' },
  database: { type: 'string' },
  output: { type: 'string', short: 'o' },
} as const;

export interface FolderArguments {
  readonly data: string;
  /** `--database postgres://...`, or the environment's; null where the records are in the folder. */
  readonly database: string | null;
  /** `-o FILE`, or the one plain argument. */
  readonly file: string | null;
}

/** Reads `[FILE] --data DIR [--database ADDRESS] [-o FILE]`; the data folder is asked for by every one of them. */
export function folderArguments(args: readonly string[], usage: string): FolderArguments {
  const { values, positionals } = parsedArguments(args, OPTIONS, usage);
  if (!values.data) throw new InputError('no data folder was given', '--data', `use: ${usage}`);
  const file = values.output ?? positionals[0];
  if (positionals.length > (values.output ? 0 : 1))
    throw new InputError(`"${positionals.at(-1)}" is too much`, '', `use: ${usage}`);
  const database = values.database ?? process.env.BONEWRIGHT_DATABASE ?? null;
  return { data: userPath(values.data), database, file: file ? userPath(file) : null };
}

/** The file that a command cannot do without. */
export function neededFile({ file }: FolderArguments, usage: string): string {
  if (!file) throw new InputError('no file was given', '', `use: ${usage}`);
  return file;
}

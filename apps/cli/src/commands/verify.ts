/** `verify --data DIR`: every record and attachment against its hash; exit 1 names what is damaged. */
import { verifyFolder } from '@bonewright/store';
import { folderArguments } from '../folder-arguments.ts';
import { print } from '../output.ts';

export async function run(args: readonly string[]): Promise<void> {
  const { data, database } = folderArguments(args, 'verify --data DIR');
  const damaged = await verifyFolder(data, database);
  print({ data, damaged });
  for (const { what, where, because } of damaged) process.stderr.write(`damaged ${what} ${where}: ${because}\n`);
  if (damaged.length > 0) process.exitCode = 1;
}

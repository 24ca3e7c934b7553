/** `restore FILE --data NEWDIR`: a backup laid out in a new folder, checked against its hashes. */
import { restore, verifyFolder } from '@bonewright/store';
import { folderArguments, neededFile } from '../folder-arguments.ts';
import { print } from '../output.ts';

const USAGE = 'restore FILE --data NEWDIR';

export async function run(args: readonly string[]): Promise<void> {
  const folder = folderArguments(args, USAGE);
  await restore(neededFile(folder, USAGE), folder.data, folder.database);
  const damaged = await verifyFolder(folder.data, folder.database);
  print({ data: folder.data, damaged });
  if (damaged.length > 0) process.exitCode = 1;
}

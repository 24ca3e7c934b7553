/** `backup --data DIR -o FILE`: everything recorded, with its attachments, in one file; while the program runs, too. */
import { openExistingStore } from '@bonewright/store';
import { folderArguments, neededFile } from '../folder-arguments.ts';
import { print } from '../output.ts';

const USAGE = 'backup --data DIR -o FILE';

export async function run(args: readonly string[]): Promise<void> {
  const folder = folderArguments(args, USAGE);
  const file = neededFile(folder, USAGE);
  const store = await openExistingStore(folder.data, folder.database);
  try {
    const leftOut = await store.backup(file);
    print({ file, leftOut });
    if (leftOut.length > 0) process.exitCode = 1;
  } finally {
    await store.close();
  }
}

/** `import-case FILE.zip --data DIR`: a case that another practice exported, added with its history; nothing here is changed. */
import { readBundle } from '@bonewright/server';
import { openExistingStore } from '@bonewright/store';
import { readBytes } from '../files.ts';
import { folderArguments, neededFile } from '../folder-arguments.ts';
import { print } from '../output.ts';

const USAGE = 'import-case FILE.zip --data DIR';

export async function run(args: readonly string[]): Promise<void> {
  const folder = folderArguments(args, USAGE);
  const bytes = readBytes(neededFile(folder, USAGE));
  const store = await openExistingStore(folder.data, folder.database);
  try {
    print(await readBundle(store, bytes));
  } finally {
    await store.close();
  }
}

import { open } from 'node:fs/promises';

/** Resolves when the file or folder is on disk. */
export async function flush(path: string): Promise<void> {
  const handle = await open(path, 'r');
  await handle.sync().finally(() => handle.close());
}

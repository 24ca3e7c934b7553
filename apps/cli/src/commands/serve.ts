/** `serve --port N --data DIR`: the program's pages and records on this machine. */
import { runServer } from '@bonewright/server';

export async function run(args: readonly string[]): Promise<void> {
  await runServer(args);
}

/** The server as a program: prints its address, stops when asked. */
import { serveArguments } from './arguments.ts';
import { serve } from './serve.ts';

/** Runs until the process is told to stop. Throws InputError for bad arguments, a taken port or unusable records. */
export async function runServer(args: readonly string[]): Promise<void> {
  const { address, close } = await serve(serveArguments(args));
  process.stdout.write(`Bonewright is at ${address}/\n`);
  const stopped = new Promise<void>((resolve) => {
    process.once('SIGINT', resolve);
    process.once('SIGTERM', resolve);
  });
  await stopped;
  await close();
}

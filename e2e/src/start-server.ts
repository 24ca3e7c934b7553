/** Starts the real server on an empty folder and a free port, once for all browser tests. */
import type { TestProject } from 'vitest/node';
import { startServer } from './server-process.ts';

declare module 'vitest' {
  interface ProvidedContext {
    address: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { address, logged, stop } = await startServer();
  project.provide('address', address);
  return async () => {
    await stop();
    process.stderr.write(logged());
  };
}

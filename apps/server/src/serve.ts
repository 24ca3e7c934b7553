/** Opens the records in a folder and serves them with the pages. */
import { join } from 'node:path';
import { loadDemonstration } from '@bonewright/demo';
import { InputError } from '@bonewright/fault';
import { openStore, type Store } from '@bonewright/store';
import { buildApp } from './app.ts';

export interface ServeOptions {
  /** 0: any free port. */
  readonly port: number;
  readonly dataDir: string;
  readonly host?: string;
}

export interface Running {
  /** `http://127.0.0.1:4180`, without a slash at its end. */
  readonly address: string;
  close(): Promise<void>;
}

const WEB_DIR = join(import.meta.dirname, '../../web/dist');
const DEMONSTRATION_OFFERED = 'demonstration-offered';
const ONLY_THIS_MACHINE = '127.0.0.1';

/** Serves until closed. An empty folder begins with the demonstration. Throws InputError where the port or the folder cannot be used. */
export async function serve({ port, dataDir, host = ONLY_THIS_MACHINE }: ServeOptions): Promise<Running> {
  const store = await openStore(dataDir);
  try {
    await beginWithDemonstration(store);
    const app = await buildApp({ store, webDir: WEB_DIR, log: process.stderr });
    const address = await app.listen({ port, host }).catch((error: unknown) => refusePort(error, port));
    return { address, close: () => app.close().then(() => store.close()) };
  } catch (error) {
    await store.close();
    throw error;
  }
}

/** Once in a folder's life: one that was emptied stays empty. Cut short, it is finished at the next start. */
async function beginWithDemonstration(store: Store): Promise<void> {
  if (await store.isMarked(DEMONSTRATION_OFFERED)) return;
  await loadDemonstration(store);
  await store.mark(DEMONSTRATION_OFFERED);
}

function refusePort(error: unknown, port: number): never {
  const code = error instanceof Error && 'code' in error ? error.code : '';
  if (code === 'EADDRINUSE')
    throw new InputError(
      `port ${port} is taken by another program, perhaps by Bonewright itself`,
      '--port',
      `open http://127.0.0.1:${port}/ to see, or use another one: npm start -- --port ${port + 1}`,
    );
  if (code === 'EACCES') throw new InputError(`port ${port} is not for everybody`, '--port', 'use one above 1024');
  throw error;
}

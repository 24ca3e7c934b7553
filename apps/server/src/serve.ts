/** Opens the records in a folder and serves them with the pages. */
import { join } from 'node:path';
import { InputError } from '@bonewright/fault';
import { openStore } from '@bonewright/store';
import { buildApp } from './app.ts';
import { isLoopback } from './people/this-machine.ts';
import type { ReceiveOptions } from './receive/receive-options.ts';

export interface ServeOptions {
  /** 0: any free port. */
  readonly port: number;
  readonly dataDir: string;
  readonly host?: string;
  /** The address of a PostgreSQL database; the records are in a file in the folder where it is left out. */
  readonly database?: string;
  /** Names by which the practice's network knows this machine, beside its own. */
  readonly names?: readonly string[];
  /** Begin without the demonstration. */
  readonly isEmptyWanted?: boolean;
  /** Where X-ray machines may send films; off where it is left out. */
  readonly receive?: ReceiveOptions;
}

export interface Running {
  /** `http://127.0.0.1:4180`, without a slash at its end. */
  readonly address: string;
  close(): Promise<void>;
}

const WEB_DIR = join(import.meta.dirname, '../../web/dist');
const ONLY_THIS_MACHINE = '127.0.0.1';

/** Serves until closed. A new folder begins with the demonstration, made while the pages already open. Throws InputError where the port or the folder cannot be used, or the network may not be listened to yet. */
export async function serve({
  port,
  dataDir,
  database,
  host = ONLY_THIS_MACHINE,
  ...wanted
}: ServeOptions): Promise<Running> {
  const store = await openStore(dataDir, database);
  try {
    if (!isLoopback(host) && !(await store.people.hasAccounts())) refuseWithoutAccounts(host, port);
    const app = await buildApp({ store, webDir: WEB_DIR, log: process.stderr, ...wanted });
    const address = await app.listen({ port, host }).catch(async (error: unknown) => {
      await app.close();
      return refusePort(error, port);
    });
    return { address, close: () => app.close().then(() => store.close()) };
  } catch (error) {
    await store.close();
    throw error;
  }
}

function refuseWithoutAccounts(host: string, port: number): never {
  throw new InputError(
    `nobody has an account yet, so nothing may listen on ${host}: everybody on the network would own the records`,
    '--host',
    `make the first account: npm run bonewright -- people add "R. Fenn" --role surgeon --data DIR, or start without --host and open http://127.0.0.1:${port}/people`,
  );
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

/** `--port N --data DIR --database postgres://... --host ADDRESS --name NAME --empty --receive ADDRESS:PORT --aet TITLE`, read or refused in words. */
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { InputError } from '@bonewright/fault';
import { receiveOptions } from './receive/receive-options.ts';
import type { ServeOptions } from './serve.ts';

const PORT = '4180';
const LARGEST_PORT = 65535;
const DATA_DIR = join(import.meta.dirname, '../../../data');

/** What the arguments ask for. A folder is relative to where the user stood. Throws InputError for an unknown argument or no port. */
export function serveArguments(args: readonly string[]): ServeOptions {
  const {
    port = PORT,
    data,
    database = process.env.BONEWRIGHT_DATABASE,
    host,
    name,
    empty = false,
    receive,
    aet,
  } = parsed(args);
  const receiving = receiveOptions(receive, aet);
  const number = Number(port);
  if (!/^\d+$/.test(port) || number > LARGEST_PORT)
    throw new InputError(`"${port}" is not a port`, '--port', `give a number from 0 to ${LARGEST_PORT}`);
  const dataDir = data === undefined ? DATA_DIR : resolve(process.env.INIT_CWD ?? process.cwd(), data);
  return {
    ...{ port: number, dataDir, isEmptyWanted: empty },
    ...(database !== undefined && { database }),
    ...(host !== undefined && { host }),
    ...(name !== undefined && { names: name.map((n) => n.toLowerCase()) }),
    ...(receiving && { receive: receiving }),
  };
}

function parsed(args: readonly string[]) {
  const text = { type: 'string' } as const;
  const options = {
    port: text,
    data: text,
    database: text,
    host: text,
    receive: text,
    aet: text,
    name: { type: 'string', multiple: true },
    empty: { type: 'boolean' },
  } as const;
  try {
    return parseArgs({ args: [...args], options }).values;
  } catch (error) {
    throw new InputError(error instanceof Error ? error.message : String(error), '', 'use --port N and --data DIR');
  }
}

/** A PostgreSQL of one's own, for tests and benches: in a passing folder, on a socket there, run by whoever may run it. */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { Client } from 'pg';

/** Where Debian puts programs that it keeps off PATH. */
const DEBIAN = '/usr/lib/postgresql';
const FOR_TESTS = ['-c', 'listen_addresses=', '-c', 'max_connections=50'];
const LONGEST_MS = 30_000;

export interface PrivatePostgres {
  /** The address of a new empty database. */
  freshDatabase(): Promise<string>;
  /** Runs one statement in that database, past the store. */
  run(address: string, statement: string): Promise<readonly Record<string, unknown>[]>;
  /** Stops it as a machine that fails would, and starts it again on the same data. */
  crash(): Promise<void>;
  startAgain(): Promise<void>;
  /** Stops it and removes its folder. */
  stop(): Promise<void>;
}

/** Starts it. `isDurable`: flush every commit to disk, as in use; quicker without. Throws where PostgreSQL is not installed. */
export async function startPostgres({ isDurable = false } = {}): Promise<PrivatePostgres> {
  const bin = programs();
  const as = someoneWhoMay();
  const dir = mkdtempSync(join(tmpdir(), 'bonewright-pg-'));
  if (as) chownSync(dir, as.uid, as.gid);
  const data = join(dir, 'data');
  const init = ['-D', data, '-A', 'trust', '-U', 'postgres', '-E', 'UTF8', '--locale=C', '--no-sync'];
  execFileSync(join(bin, 'initdb'), init, { ...as, stdio: 'ignore', cwd: dir });
  const args = ['-D', data, '-k', dir, ...FOR_TESTS, ...(isDurable ? [] : ['-c', 'fsync=off'])];
  const start = (): ChildProcess => spawn(join(bin, 'postgres'), args, { ...as, stdio: 'ignore', cwd: dir });
  const addressOf = (name: string): string => `postgres:///${name}?host=${dir}&user=postgres`;
  let server = start();
  const end = async (): Promise<void> => {
    const ended = once(server, 'exit');
    server.kill('SIGQUIT');
    await ended;
  };
  await answering(addressOf('postgres'));
  return {
    async freshDatabase() {
      const name = `t${randomBytes(6).toString('hex')}`;
      await query(addressOf('postgres'), `create database ${name}`);
      return addressOf(name);
    },
    run: query,
    crash: end,
    async startAgain() {
      server = start();
      await answering(addressOf('postgres'));
    },
    async stop() {
      await end();
      rmSync(dir, { recursive: true, force: true });
    },
  };
}

function programs(): string {
  const versions = existsSync(DEBIAN) ? readdirSync(DEBIAN).map((version) => join(DEBIAN, version, 'bin')) : [];
  const found = [...versions, ...(process.env.PATH ?? '').split(':')].find((dir) => existsSync(join(dir, 'initdb')));
  if (!found) throw new Error('no PostgreSQL found: run npm test, which installs it');
  return found;
}

/** PostgreSQL refuses to run as root. */
function someoneWhoMay(): { readonly uid: number; readonly gid: number } | null {
  if (process.getuid?.() !== 0) return null;
  const id = (flag: string): number => Number(execFileSync('id', [flag, 'postgres'], { encoding: 'utf8' }));
  return { uid: id('-u'), gid: id('-g') };
}

async function answering(address: string): Promise<void> {
  const until = Date.now() + LONGEST_MS;
  while (true) {
    const fault = await query(address, 'select 1').then(
      () => null,
      (error: unknown) => error,
    );
    if (fault === null) return;
    if (Date.now() > until) throw fault;
    await setTimeout(50);
  }
}

async function query(address: string, statement: string): Promise<readonly Record<string, unknown>[]> {
  const client = new Client(address);
  client.on('error', () => undefined);
  await client.connect();
  return client
    .query(statement)
    .then(({ rows }) => rows)
    .finally(() => client.end());
}

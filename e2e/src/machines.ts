/** X-ray machines and a second receiver, played by the programs of Debian's dcmtk. */
import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync, readlinkSync, rmSync } from 'node:fs';
import { connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';

export interface Said {
  readonly code: number;
  /** All it wrote, both streams. */
  readonly words: string;
}

/** Runs `echoscu` or `storescu` to its end. */
export function machine(program: 'echoscu' | 'storescu', args: readonly string[]): Promise<Said> {
  return new Promise((resolve) => {
    execFile(program, ['-v', ...args], (error, out, err) => {
      const code = typeof error?.code === 'number' ? error.code : error ? 1 : 0;
      resolve({ code, words: out + err });
    });
  });
}

export interface SecondReceiver {
  readonly port: number;
  /** The one file that it has received since it was asked last. */
  file(): Buffer;
  stop(): Promise<void>;
}

/** `storescp +B`: takes every syntax it knows and writes the bytes as they come. */
export async function secondReceiver(): Promise<SecondReceiver> {
  const folder = mkdtempSync(join(tmpdir(), 'bonewright-second-'));
  const port = await freePort();
  const receiver = spawn('storescp', ['+xa', '+B', '-od', folder, String(port)], { stdio: 'ignore' });
  const ended = once(receiver, 'exit');
  while (!(await isListening(port))) await setTimeout(50);
  return {
    port,
    file() {
      const names = readdirSync(folder);
      const [name] = names;
      if (name === undefined || names.length > 1) throw new Error(`${names.length} files instead of one`);
      const bytes = readFileSync(join(folder, name));
      rmSync(join(folder, name));
      return bytes;
    },
    async stop() {
      receiver.kill();
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The addresses on which a process listens, as `127.0.0.1:4180`; from the kernel's own list. */
export function listeningOf(pid: number): string[] {
  const sockets = readdirSync(`/proc/${pid}/fd`).flatMap((fd) => linkOf(`/proc/${pid}/fd/${fd}`));
  const rows = ['tcp', 'tcp6'].flatMap((kind) => readFileSync(`/proc/${pid}/net/${kind}`, 'utf8').trim().split('\n'));
  return rows
    .map((row) => row.trim().split(/\s+/))
    .filter(([, , , state, , , , , , inode]) => state === LISTEN && sockets.includes(`socket:[${inode}]`))
    .map(([, local = '']) => addressOf(local));
}

const LISTEN = '0A';

function linkOf(path: string): string[] {
  try {
    return [readlinkSync(path)];
  } catch {
    return [];
  }
}

/** `0100007F:1054` is 127.0.0.1:4180: the address in the machine's own byte order. */
function addressOf(local: string): string {
  const [host = '', port = ''] = local.split(':');
  const bytes = host.match(/../g)?.map((byte) => Number.parseInt(byte, 16)) ?? [];
  return `${bytes.toReversed().join('.')}:${Number.parseInt(port, 16)}`;
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const place = server.address();
  await new Promise((closed) => server.close(closed));
  if (place === null || typeof place === 'string') throw new Error('no port is free');
  return place.port;
}

async function isListening(port: number): Promise<boolean> {
  const socket = connect(port, '127.0.0.1');
  const isOpen = await once(socket, 'connect').then(
    () => true,
    () => false,
  );
  socket.destroy();
  return isOpen;
}

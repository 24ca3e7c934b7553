/** The real server as a process of its own, on a new folder and a free port. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface ServerProcess {
  readonly address: string;
  readonly pid: number;
  readonly dataDir: string;
  /** What it wrote on standard error so far. */
  logged(): string;
  /** Stops it and removes its folder. */
  stop(): Promise<void>;
}

const ROOT = join(import.meta.dirname, '../..');

export async function startServer(...more: readonly string[]): Promise<ServerProcess> {
  const dataDir = mkdtempSync(join(tmpdir(), 'bonewright-e2e-'));
  const args = ['--import', 'tsx', 'apps/server/src/main.ts', '--port', '0', '--data', dataDir, ...more];
  const server = spawn(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] });
  let logged = '';
  server.stderr.on('data', (chunk: Buffer) => {
    logged += chunk.toString();
  });
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    server.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const found = /http:\/\/[^\s]+/.exec(said);
      if (found) resolve(found[0].replace(/\/$/, ''));
    });
    server.once('exit', (code) => reject(new Error(`the server ended with ${code}: ${logged}`)));
  });
  return {
    address,
    pid: server.pid ?? 0,
    dataDir,
    logged: () => logged,
    async stop() {
      server.kill('SIGTERM');
      await ended;
      rmSync(dataDir, { recursive: true, force: true });
    },
  };
}

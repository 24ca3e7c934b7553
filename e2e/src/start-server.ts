/** Starts the real server on an empty folder and a free port, once for all browser tests. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    address: string;
  }
}

const ROOT = join(import.meta.dirname, '../..');

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const data = mkdtempSync(join(tmpdir(), 'bonewright-e2e-'));
  const args = ['--import', 'tsx', 'apps/server/src/main.ts', '--port', '0', '--data', data, '--empty'];
  const server = spawn(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    server.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const found = /http:\/\/[^\s]+/.exec(said);
      if (found) resolve(found[0].replace(/\/$/, ''));
    });
    server.once('exit', (code) => reject(new Error(`the server ended with ${code} before it printed its address`)));
  });
  project.provide('address', address);
  return async () => {
    server.kill('SIGTERM');
    await ended;
    rmSync(data, { recursive: true, force: true });
  };
}

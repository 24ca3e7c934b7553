/** Writers killed (SIGKILL) at random moments under load: is anything that was acknowledged missing, is anything damaged? */
import { spawn } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { openStore } from '@bonewright/store';
import { startPostgres } from '@bonewright/store/private-postgres';
import type { Row } from './row.ts';

const KILLS = { SQLite: 500, PostgreSQL: 50 };
/** Records begin anew after so many, so that each check stays short. */
const AFRESH_AFTER = 25;
const LONGEST_WAIT_MS = 150;

export async function benchKills(): Promise<Row[]> {
  const most = Number(process.argv[3] ?? Number.POSITIVE_INFINITY);
  const postgres = await startPostgres({ isDurable: true });
  try {
    const sqlite = await kills('SQLite', Math.min(most, KILLS.SQLite), async () => null);
    return [...sqlite, ...(await kills('PostgreSQL', Math.min(most, KILLS.PostgreSQL), postgres.freshDatabase))];
  } finally {
    await postgres.stop();
  }
}

async function kills(name: string, count: number, fresh: () => Promise<string | null>): Promise<Row[]> {
  const found = { acknowledged: 0, missing: 0, damaged: 0 };
  for (let done = 0; done < count; done += AFRESH_AFTER) {
    const dir = mkdtempSync(join(tmpdir(), 'bonewright-kills-'));
    const database = await fresh();
    const acknowledged = new Map<string, number>();
    for (let kill = done; kill < Math.min(count, done + AFRESH_AFTER); kill++) {
      await killed(dir, database, acknowledged);
      found.missing += await missing(dir, database, acknowledged, found);
    }
    for (const seq of acknowledged.values()) found.acknowledged += seq;
    rmSync(dir, { recursive: true, force: true });
  }
  return [
    { what: `${name}: kills`, figure: count, unit: '' },
    { what: `${name}: events acknowledged`, figure: found.acknowledged, unit: '' },
    { what: `${name}: acknowledged events missing afterwards`, figure: found.missing, unit: '', goal: '0' },
    { what: `${name}: kills after which verify found damage`, figure: found.damaged, unit: '', goal: '0' },
  ];
}

/** Notes the last number that was acknowledged of each case before the writer was killed. */
async function killed(dir: string, database: string | null, acknowledged: Map<string, number>): Promise<void> {
  const program = fileURLToPath(new URL('./kills-child.ts', import.meta.url));
  const writer = spawn(process.execPath, ['--import', 'tsx', program, dir, database ?? ''], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(writer, 'close');
  let said = '';
  writer.stdout.on('data', (chunk: Buffer) => {
    said += chunk;
  });
  await Promise.race([once(writer.stdout, 'data'), ended]);
  await setTimeout(randomInt(LONGEST_WAIT_MS));
  writer.kill('SIGKILL');
  await ended;
  for (const line of said.slice(0, said.lastIndexOf('\n')).split('\n')) {
    const [caseId = '', seq] = line.split(' ');
    if (caseId) acknowledged.set(caseId, Number(seq));
  }
}

async function missing(
  dir: string,
  database: string | null,
  acknowledged: ReadonlyMap<string, number>,
  found: { damaged: number },
): Promise<number> {
  const store = await openStore(dir, database);
  try {
    let gone = 0;
    for (const [caseId, seq] of acknowledged) gone += Math.max(0, seq - (await store.read(caseId)).length);
    if ((await store.verify()).length > 0) found.damaged += 1;
    return gone;
  } finally {
    await store.close();
  }
}

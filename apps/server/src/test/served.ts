/** A server on a folder of its own, without its socket or with one, gone after the test. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type CaseEvent, checkEvent } from '@bonewright/casebook';
import { openStore, type Store } from '@bonewright/store';
import type { FastifyInstance } from 'fastify';
import { onTestFinished } from 'vitest';
import { type AppOptions, buildApp } from '../app.ts';

export const CASE = 'case-aaaa';
export const PAGE = '<!doctype html><title>Bonewright</title><script type="module" src="/assets/main-1.js"></script>';

/** A hash that costs nothing: tests make many. */
export const CHEAP = { N: 2, r: 8, p: 1 };

export interface Served {
  readonly app: FastifyInstance;
  readonly store: Store;
  readonly logged: string[];
}

export function freshFolder(): string {
  const dir = mkdtempSync(join(tmpdir(), 'bonewright-server-'));
  onTestFinished(() => rmSync(dir, { recursive: true, force: true }));
  return dir;
}

/** The app on a real store; `change` may put another one in front of it. */
export async function served(
  change: (store: Store) => Store = (store) => store,
  more: Partial<AppOptions> = {},
): Promise<Served> {
  const dir = freshFolder();
  const webDir = join(dir, 'web');
  mkdirSync(join(webDir, 'assets'), { recursive: true });
  writeFileSync(join(webDir, 'index.html'), PAGE);
  writeFileSync(join(webDir, 'assets', 'main-1.js'), 'export {};');
  const logged: string[] = [];
  const store = await openStore(join(dir, 'data'));
  const app = await buildApp({
    store: change(store),
    webDir,
    log: { write: (line) => logged.push(line) },
    passwordCost: CHEAP,
    ...more,
  });
  onTestFinished(async () => {
    await app.close();
    await store.close();
  });
  return { app, store, logged };
}

function event(seq: number, kind: string, payload: unknown, by = 'R. Fenn'): CaseEvent {
  const head = { schema: 1, id: `${CASE}-${by.replace(/\W/g, '')}-${seq}`, caseId: CASE, seq };
  return checkEvent({ ...head, at: '2026-11-25T23:10:00Z', by, kind, payload });
}

export function opened(demonstration = false): CaseEvent {
  const patient = { species: 'tawny owl', name: '', massG: 440, weighedAt: null, ageClass: 'adult', sex: 'unknown' };
  const limb = { bone: 'tibiotarsus', side: 'right' };
  return event(1, 'case-opened', { number: '26-041', ...patient, ...limb, demonstration });
}

export function note(seq: number, by?: string): CaseEvent {
  return event(seq, 'note-added', { text: `note ${seq}`, stage: null }, by);
}

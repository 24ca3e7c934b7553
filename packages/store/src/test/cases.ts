/** Small cases for the store's tests. */
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type CaseEvent, checkEvent } from '@bonewright/casebook';
import { onTestFinished } from 'vitest';

const AT = '2026-11-25T23:10:00Z';

/** A folder that is gone after the test. */
export function freshFolder(): string {
  const dir = mkdtempSync(join(tmpdir(), 'bonewright-store-'));
  onTestFinished(() => rmSync(dir, { recursive: true, force: true }));
  return dir;
}

export function event(caseId: string, seq: number, kind: string, payload: unknown, by = 'R. Fenn'): CaseEvent {
  return checkEvent({
    schema: 1,
    id: `${caseId}-${by.replace(/\W/g, '')}-${seq}`,
    caseId,
    seq,
    at: AT,
    by,
    kind,
    payload,
  });
}

export function opened(caseId: string, demonstration = false): CaseEvent {
  const patient = { species: 'red squirrel', name: '', massG: 310, weighedAt: AT, ageClass: 'adult', sex: 'female' };
  return event(caseId, 1, 'case-opened', { number: '26-041', ...patient, bone: 'tibia', side: 'left', demonstration });
}

export function note(caseId: string, seq: number, text = `note ${seq}`, by?: string): CaseEvent {
  return event(caseId, seq, 'note-added', { text, stage: null }, by);
}

export function filmAdded(caseId: string, seq: number, bytes: Uint8Array): CaseEvent {
  const size = { byteLength: bytes.length, rows: 10, cols: 10 };
  const film = { filmId: `film-${caseId}-${seq}`, sha256: sha256(bytes), fileName: 'a.dcm', view: null, takenAt: AT };
  return event(caseId, seq, 'film-added', { ...film, ...size });
}

export const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

export async function* chunks(bytes: Uint8Array, size = 1000): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

/** Bytes that look like nothing else, the same every time. */
export function someBytes(length: number, seed = 1): Uint8Array {
  return Uint8Array.from({ length }, (_, i) => (i * 31 + seed * 17 + ((i * i) >> 5)) & 255);
}

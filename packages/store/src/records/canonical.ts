/** One text for one value: keys sorted, nothing undefined. Two equal events have equal texts, and so equal hashes. */
import { createHash } from 'node:crypto';

export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) => (isRecord(part) ? sorted(part) : part));
}

/** The hash of a case's event: it also vouches for all the events before it. */
export function chainHash(before: string, body: string): string {
  return createHash('sha256').update(before).update('\n').update(body).digest('hex');
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function sorted(record: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(record).sort(([a], [b]) => (a < b ? -1 : 1)));
}

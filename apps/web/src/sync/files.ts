/** Files of films and photographs, kept here by their hash before anything says that they exist, and sent before it too. */
import { getFile, putFile } from './api.ts';
import { database, type KeptFile } from './database.ts';
import type { AnyRecord } from './record-kind.ts';

const MOST_KEPT = 24;
/** Files of a browser that keeps nothing: they live as long as the page. */
const inMemory = new Map<string, KeptFile>();

/** Resolves when the file is kept here. */
export async function keepFile(sha256: string, bytes: Uint8Array): Promise<void> {
  if (await kept(sha256)) return;
  await put({ sha256, bytes, isSent: false, usedAt: Date.now() });
}

/** From here, or from the server. */
export async function fileBytes(sha256: string): Promise<Uint8Array> {
  const here = await kept(sha256);
  if (here) return here.bytes;
  const bytes = await getFile(sha256);
  await put({ sha256, bytes, isSent: true, usedAt: Date.now() });
  await dropOldest();
  return bytes;
}

/** Sends the files that these events speak of, where the server may not have them yet. */
export async function sendFilesOf(events: readonly AnyRecord['known'][]): Promise<void> {
  for (const event of events) {
    for (const sha256 of hashesIn(event)) {
      const file = await kept(sha256);
      if (!file || file.isSent) continue;
      await putFile(file.sha256, file.bytes);
      await put({ ...file, isSent: true });
    }
  }
}

/** The server lost what it had: send again what this entry needs. */
export async function sendFilesOfAgain(entry: AnyRecord['entry']): Promise<void> {
  for (const sha256 of hashesIn(entry)) {
    const file = await kept(sha256);
    if (file) await put({ ...file, isSent: false });
  }
}

/** Files that an entry rests on. */
function hashesIn({ kind, payload }: AnyRecord['known'] | AnyRecord['entry']): string[] {
  if (kind === 'film-added') return [payload.sha256];
  if (kind === 'photo-added') return [payload.photo.sha256];
  return kind === 'pin-site-seen' && payload.photo ? [payload.photo.sha256] : [];
}

async function kept(sha256: string): Promise<KeptFile | undefined> {
  const held = inMemory.get(sha256);
  if (held) return held;
  try {
    return await (await database()).get('files', sha256);
  } catch {
    return undefined;
  }
}

async function put(file: KeptFile): Promise<void> {
  try {
    await (await database()).put('files', file);
  } catch {
    inMemory.set(file.sha256, file);
  }
}

async function dropOldest(): Promise<void> {
  const db = await database().catch(() => null);
  const sent = ((await db?.getAll('files')) ?? []).filter(({ isSent }) => isSent).sort((a, b) => b.usedAt - a.usedAt);
  for (const { sha256 } of sent.slice(MOST_KEPT)) await db?.delete('files', sha256);
}

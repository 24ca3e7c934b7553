/** Brings in a case from a bundle: checked whole before anything is kept, then recorded in one step. Adds, never changes. */
import { createHash } from 'node:crypto';
import {
  broughtEvents,
  bundlePath,
  EVENTS,
  filesNamed,
  freshOf,
  MANIFEST,
  type Manifest,
  readManifest,
} from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { type ZipEntry, zipEntries, zipEntry } from '@bonewright/film';
import { canonicalJson, chainHash, type Store } from '@bonewright/store';

export interface BroughtIn {
  readonly caseId: string;
  /** How many events were new here. */
  readonly added: number;
}

const NAME = 'the copy';
const AGAIN = 'ask for the copy again';

/** Throws InputError, with nothing recorded, where the bundle is damaged, altered, or says otherwise than the record here. */
export async function readBundle(store: Store, zip: Uint8Array): Promise<BroughtIn> {
  const entries = entriesOf(zip);
  const manifest = readManifest(textOf(zip, entries, MANIFEST));
  requireFiles(zip, entries, manifest);
  const events = broughtEvents(textOf(zip, entries, EVENTS), manifest);
  const texts = events.map(canonicalJson);
  if (texts.reduce(chainHash, '') !== manifest.chain)
    throw new InputError('the events are not those that the manifest vouches for', EVENTS, AGAIN);
  const { caseId } = manifest;
  const fresh = freshOf(events, texts, await store.readText(caseId));
  const files = new Map(fresh.flatMap(filesNamed).map((file) => [file.sha256, bundlePath(file)]));
  for (const path of files.values()) entryOf(entries, path);
  for (const [sha256, path] of files)
    await store.putAttachment(oneChunk(zipEntry(zip, entryOf(entries, path))), { expectedSha256: sha256 });
  if (fresh.length === 0) return { caseId, added: 0 };
  return { caseId, added: (await store.append(fresh)).added };
}

type Entries = ReadonlyMap<string, ZipEntry>;

function entriesOf(zip: Uint8Array): Entries {
  const listed = listedIn(zip);
  const entries = new Map(listed.map((entry) => [entry.name, entry]));
  if (entries.size !== listed.length) throw new InputError('two files in the copy have one name', '', AGAIN);
  return entries;
}

/** What is said of archives of films would send somebody the wrong way here. */
function listedIn(zip: Uint8Array): ZipEntry[] {
  try {
    return zipEntries(zip, NAME);
  } catch (error) {
    throw error instanceof InputError ? new InputError(error.what, '', AGAIN) : error;
  }
}

function entryOf(entries: Entries, path: string): ZipEntry {
  const entry = entries.get(path);
  if (!entry) throw new InputError(`${path} is not in the copy`, path, AGAIN);
  return entry;
}

function textOf(zip: Uint8Array, entries: Entries, path: string): string {
  return new TextDecoder().decode(zipEntry(zip, entryOf(entries, path)));
}

/** The bundle holds the files of its manifest, each with its hash, and nothing else. */
function requireFiles(zip: Uint8Array, entries: Entries, { files }: Manifest): void {
  const named = new Set([MANIFEST, ...files.map(({ path }) => path)]);
  const stray = [...entries.keys()].find((path) => !named.has(path));
  if (stray !== undefined) throw new InputError('the copy holds a file that its manifest does not name', '', AGAIN);
  if (!files.some(({ path }) => path === EVENTS)) throw new InputError(`${EVENTS} is not in the manifest`, '', AGAIN);
  for (const { path, sha256 } of files) {
    const bytes = zipEntry(zip, entryOf(entries, path));
    if (createHash('sha256').update(bytes).digest('hex') !== sha256)
      throw new InputError(`${path} was changed after the copy was made: its hash differs`, path, AGAIN);
  }
}

async function* oneChunk(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

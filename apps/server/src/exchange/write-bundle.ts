/** One case as a ZIP: the events word for word, the story, films and photographs, papers, a page, and a manifest of hashes. */
import { createHash } from 'node:crypto';
import {
  bundlePath,
  EVENTS,
  filesNamed,
  foldCase,
  MANIFEST,
  manifestText,
  type RecordedEvent,
  sentenceOf,
} from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { CASE_PAPER_NAMES, CASE_PAPERS } from '@bonewright/sheet';
import { chainHash, type Store } from '@bonewright/store';
import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import manifest from '../../package.json' with { type: 'json' };
import { csvOf } from '../series/csv.ts';
import { bundlePage } from './bundle-page.ts';

/** The ZIP's bytes as they come. Throws InputError, before the first byte, where there is no such case. */
export async function writeBundle(store: Store, caseId: string, made: Date): Promise<AsyncGenerator<Uint8Array>> {
  const [events, texts] = [await store.read(caseId), await store.readText(caseId)];
  if (events.length === 0) throw new InputError('there is no such case here', 'caseId', 'open it on the board');
  // What is recorded between the two readings is in the next copy.
  const read = texts.slice(0, events.length);
  const written = await writtenFiles(events, read, made);
  const kept = new Map(events.flatMap(filesNamed).map((file) => [bundlePath(file), file.sha256]));
  const files = [
    ...[...written].map(([path, bytes]) => ({ path, sha256: createHash('sha256').update(bytes).digest('hex') })),
    ...[...kept].map(([path, sha256]) => ({ path, sha256 })),
  ];
  const chain = read.reduce(chainHash, '');
  written.set(
    MANIFEST,
    utf8(manifestText({ caseId, exportedAt: made.toISOString(), events: read.length, chain, files })),
  );
  return zipped(store, written, kept);
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

async function writtenFiles(events: readonly RecordedEvent[], texts: readonly string[], made: Date) {
  const state = foldCase(events);
  const papers = await papersOf(events, made);
  const story = events.map((event) => [event.seq, event.at, event.by, event.kind, sentenceOf(event)]);
  return new Map([
    [EVENTS, utf8(`{"events":[${texts.join(',\n')}]}\n`)],
    ['story.csv', utf8(csvOf([['event', 'at', 'by', 'kind', 'what'], ...story]))],
    ['index.html', utf8(bundlePage(state, events, [...papers.keys()]))],
    ...papers,
  ]);
}

/** The papers for which the case says enough. */
async function papersOf(events: readonly RecordedEvent[], made: Date): Promise<Map<string, Uint8Array>> {
  const papers = new Map<string, Uint8Array>();
  const facts = { made, minutesEastOfUtc: 0, size: 'A4', version: manifest.version } as const;
  for (const name of CASE_PAPER_NAMES) {
    try {
      papers.set(`papers/${name}.pdf`, await CASE_PAPERS[name]({ ...facts, state: foldCase(events) }));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
    }
  }
  return papers;
}

async function* zipped(
  store: Store,
  written: ReadonlyMap<string, Uint8Array>,
  kept: ReadonlyMap<string, string>,
): AsyncGenerator<Uint8Array> {
  const ready: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    ready.push(chunk);
  });
  for (const [path, bytes] of written) {
    const entry = new ZipDeflate(path);
    zip.add(entry);
    entry.push(bytes, true);
    yield* ready.splice(0);
  }
  for (const [path, sha256] of kept) {
    const found = await store.getAttachment(sha256);
    if (!found) throw new Error(`attachment ${sha256} is missing; run verify`);
    const entry = new ZipPassThrough(path);
    zip.add(entry);
    for await (const chunk of found.bytes) {
      // fflate may hold on to what it is given; the stream's buffers are its own.
      entry.push(Uint8Array.from(chunk));
      yield* ready.splice(0);
    }
    entry.push(new Uint8Array(0), true);
  }
  zip.end();
  yield* ready.splice(0);
}

/** Files to films: decode, keep, record. What is no film says so under its own name; the others go on. */
import type { FilmState } from '@bonewright/casebook';
import { faultLine, InputError } from '@bonewright/fault';
import { isFilmKind, isZip } from '@bonewright/film';
import { useRef, useState } from 'react';
import { keepFile } from '../../sync/files.ts';
import type { Append } from '../../sync/new-event.ts';
import { randomId } from '../../sync/random-id.ts';
import { fileHash } from '../engine/file-hash.ts';
import { putOnShelf } from '../engine/film-shelf.ts';
import { OpenFilm } from '../engine/open-film.ts';
import { type Arrivals, after, NO_ARRIVALS, withoutLine } from './arrivals.ts';
import { bytesOf, type Incoming } from './incoming.ts';
import { OpenZip } from './open-zip.ts';
import { takenAt } from './taken-at.ts';

export interface Intake {
  readonly arrivals: Arrivals;
  readonly take: (files: readonly Incoming[]) => void;
  /** A film that was made of a photograph. */
  readonly takeSquared: (name: string, bytes: Uint8Array) => void;
  readonly dismiss: (key: string) => void;
  readonly dismissAll: () => void;
}

interface FilmSaid {
  readonly fileName?: string;
  /** Squared up from a photograph. */
  readonly isPhotograph?: boolean;
}

interface Waiting extends FilmSaid {
  readonly key: string;
  readonly name: string;
  readonly isChosen: boolean;
  readonly read: () => Promise<Uint8Array<ArrayBuffer>>;
}

type Ended = 'in' | 'no-film' | { readonly why: string };

const LONGEST_NAME = 200;

export function useIntake(films: readonly FilmState[], append: Append): Intake {
  const [arrivals, setArrivals] = useState<Arrivals>(NO_ARRIVALS);
  const known = useRef(new Set<string>());
  for (const { file } of films) known.current.add(file.value.sha256);
  const queue = useRef<Promise<void>>(Promise.resolve());

  const takeOne = async ({ key, name, isChosen, read, ...film }: Waiting) => {
    setArrivals((now) => after(now, { kind: 'reading', key }));
    const ended = await faultOf(name, async (): Promise<Ended> => {
      const bytes = await read();
      if (isZip(bytes)) {
        await takeZip(bytes, name);
        return 'in';
      }
      if (!isChosen && !isFilmKind(bytes)) return 'no-film';
      return takeFilm({ fileName: name, ...film }, bytes, known.current, append);
    });
    setArrivals((now) => after(now, { kind: 'ended', key, ended }));
  };
  const takeZip = async (bytes: Uint8Array<ArrayBuffer>, zipName: string) => {
    const zip = await OpenZip.open(bytes, zipName);
    try {
      const keyed = zip.entries.map((entry) => ({ key: randomId(), name: `${zipName}: ${entry.name}`, entry }));
      setArrivals((now) => after(now, { kind: 'came', files: keyed }));
      for (const { key, name, entry } of keyed) {
        const read = async () => {
          const unpacked = Uint8Array.from(await zip.unpack(entry));
          if (isZip(unpacked)) throw new InputError('a ZIP inside a ZIP is not opened', '', 'unpack it on a computer');
          return unpacked;
        };
        await takeOne({ key, name, isChosen: false, read, fileName: entry.name });
      }
    } finally {
      zip.close();
    }
  };
  const take = (files: readonly Incoming[]) => {
    const keyed = files.map((file) => ({ key: randomId(), name: file.name, file }));
    setArrivals((now) => after(now, { kind: 'came', files: keyed }));
    // One after the other: two large films at once could need more memory than a tablet has.
    queue.current = queue.current.then(async () => {
      for (const { key, name, file } of keyed)
        await takeOne({ key, name, isChosen: file.isChosen, read: () => bytesOf(file) });
    });
  };
  const takeSquared = (name: string, bytes: Uint8Array) => {
    const key = randomId();
    setArrivals((now) => after(now, { kind: 'came', files: [{ key, name }] }));
    const read = async () => Uint8Array.from(bytes);
    queue.current = queue.current.then(() => takeOne({ key, name, isChosen: true, read, isPhotograph: true }));
  };
  return {
    arrivals,
    take,
    takeSquared,
    dismiss: (key) => setArrivals((now) => withoutLine(now, key)),
    dismissAll: () => setArrivals(NO_ARRIVALS),
  };
}

/** A film of the case from its bytes, or that it is there already. */
async function takeFilm(
  { fileName, isPhotograph = false }: FilmSaid & { readonly fileName: string },
  bytes: Uint8Array<ArrayBuffer>,
  known: Set<string>,
  append: Append,
): Promise<Ended> {
  // Where the browser makes hashes it does so beside the decoding; else the film's thread does, after it.
  const early = isSecureContext ? fileHash(bytes) : null;
  const film = await OpenFilm.open(bytes, fileName);
  const { rows, cols, header } = film.facts;
  const sha256 = await (early ?? film.sha256());
  if (known.has(sha256)) {
    film.close();
    return { why: `${fileName} is in this case already.` };
  }
  known.add(sha256);
  putOnShelf(sha256, Promise.resolve(film));
  await keepFile(sha256, bytes);
  const payload = {
    filmId: randomId(),
    sha256,
    fileName: fileName.slice(-LONGEST_NAME),
    byteLength: bytes.length,
    rows,
    cols,
    view: null,
    takenAt: takenAt(header),
    ...(isPhotograph ? { photograph: true as const } : {}),
  };
  append([{ kind: 'film-added', payload }]);
  return 'in';
}

/** How it ended, every fault in words. */
async function faultOf(name: string, job: () => Promise<Ended>): Promise<Ended> {
  try {
    return await job();
  } catch (error) {
    if (error instanceof InputError) return { why: named(name, faultLine(error)) };
    const why = error instanceof Error ? error.message : String(error);
    return { why: `${name} was not taken in, by a fault of Bonewright's own: ${why}. The file itself is unharmed.` };
  }
}

const named = (name: string, line: string): string => (line.startsWith(name) ? line : `${name}: ${line}`);

/** Files to films: decode, keep, record. What is no film says so under its own name; the others go on. */
import type { FilmState, Occasion } from '@bonewright/casebook';
import { faultLine, InputError } from '@bonewright/fault';
import { isFilmKind, isZip } from '@bonewright/film';
import { useRef, useState } from 'react';
import { keepFile } from '../../sync/files.ts';
import type { Append, NewEvent } from '../../sync/new-event.ts';
import { randomId } from '../../sync/random-id.ts';
import { putOnShelf } from '../engine/film-shelf.ts';
import { type Arrivals, after, NO_ARRIVALS, withoutLine } from './arrivals.ts';
import { bytesOf, type Incoming } from './incoming.ts';
import { OpenZip } from './open-zip.ts';
import { asFilm, type FilmSaid, openToTake } from './take-film.ts';

export interface Intake {
  readonly arrivals: Arrivals;
  /** The films of the case, and the one whose file is being kept. */
  readonly films: readonly FilmState[];
  /** Records of a film; of one that is being kept, as soon as it is. */
  readonly appendTo: (filmId: string) => Append;
  readonly take: (files: readonly Incoming[]) => void;
  /** A film that was made of a photograph. */
  readonly takeSquared: (name: string, bytes: Uint8Array) => void;
  /** A film that lies on the server already; resolves to whether the case has it. */
  readonly takeReceived: (name: string, sha256: string, read: Waiting['read']) => Promise<boolean>;
  readonly dismiss: (key: string) => void;
  readonly dismissAll: () => void;
}

interface Waiting extends Partial<FilmSaid> {
  readonly key: string;
  readonly name: string;
  readonly isChosen: boolean;
  readonly read: () => Promise<Uint8Array<ArrayBuffer>>;
}

type Ended = 'in' | 'no-film' | { readonly why: string };

/** `occasion`: what the films that come in are of, where the page they come to says it; null: it follows from the dates. */
export function useIntake(films: readonly FilmState[], occasion: Occasion | null, append: Append): Intake {
  const [arrivals, setArrivals] = useState<Arrivals>(NO_ARRIVALS);
  const [coming, setComing] = useState<FilmState | null>(null);
  const late = useRef<NewEvent[]>([]);
  const latest = useRef(films);
  latest.current = films;
  const queue = useRef<Promise<void>>(Promise.resolve());

  const isHere = (sha256: string) => latest.current.some(({ file }) => file.value.sha256 === sha256);
  const takeOne = async ({ key, name, isChosen, read, ...film }: Waiting): Promise<Ended> => {
    setArrivals((now) => after(now, { kind: 'reading', key }));
    const ended = await faultOf(name, async (): Promise<Ended> => {
      const bytes = await read();
      if (isZip(bytes)) {
        await takeZip(bytes, name);
        return 'in';
      }
      if (!isChosen && !isFilmKind(bytes)) return 'no-film';
      const opened = await openToTake({ fileName: name, ...film }, bytes);
      const payload = occasion === null ? opened.payload : { ...opened.payload, occasion };
      if (isHere(payload.sha256)) {
        opened.film.close();
        return { why: `${name} is in this case already.` };
      }
      putOnShelf(payload.sha256, Promise.resolve(opened.film));
      // Seen at once; recorded when its file is kept, and then what was said of it meanwhile.
      setComing(asFilm(payload));
      await keepFile(payload.sha256, bytes);
      append([{ kind: 'film-added', payload }, ...late.current]);
      return 'in';
    });
    late.current = [];
    setComing(null);
    setArrivals((now) => after(now, { kind: 'ended', key, ended }));
    return ended;
  };
  const takeZip = async (bytes: Uint8Array<ArrayBuffer>, zipName: string) => {
    const zip = await OpenZip.open(bytes, zipName);
    try {
      const keyed = zip.entries.map((entry) => ({ key: randomId(), name: `${zipName}: ${entry.name}`, entry }));
      setArrivals((now) => after(now, { kind: 'came', files: keyed }));
      for (const { key, name, entry } of keyed) {
        const read = async () => {
          const unpacked = new Uint8Array(await zip.unpack(entry));
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
  const takeOneMore = (one: Omit<Waiting, 'key' | 'isChosen'>): Promise<Ended> => {
    const key = randomId();
    setArrivals((now) => after(now, { kind: 'came', files: [{ key, name: one.name }] }));
    const ended = queue.current.then(() => takeOne({ key, isChosen: true, ...one }));
    queue.current = ended.then(() => undefined);
    return ended;
  };
  const takeSquared = (name: string, bytes: Uint8Array) =>
    void takeOneMore({ name, read: async () => new Uint8Array(bytes), isPhotograph: true });
  const takeReceived: Intake['takeReceived'] = async (name, sha256, read) =>
    isHere(sha256) || (await takeOneMore({ name, read })) === 'in';
  return {
    arrivals,
    films: coming && !films.some(({ filmId }) => filmId === coming.filmId) ? [...films, coming] : films,
    appendTo: (filmId) => (filmId === coming?.filmId ? (events) => late.current.push(...events) : append),
    take,
    takeSquared,
    takeReceived,
    dismiss: (key) => setArrivals((now) => withoutLine(now, key)),
    dismissAll: () => setArrivals(NO_ARRIVALS),
  };
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

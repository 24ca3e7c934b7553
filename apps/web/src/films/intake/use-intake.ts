/** Files to films: decode, keep, record. What is no film says so under its own name; the others go on. */
import type { FilmState } from '@bonewright/casebook';
import { faultLine, InputError } from '@bonewright/fault';
import { useCallback, useState } from 'react';
import { keepFile } from '../../sync/files.ts';
import type { Append } from '../../sync/new-event.ts';
import { randomId } from '../../sync/random-id.ts';
import { putOnShelf } from '../engine/film-shelf.ts';
import { OpenFilm } from '../engine/open-film.ts';
import { takenAt } from './taken-at.ts';

export interface Arriving {
  readonly key: string;
  readonly name: string;
  /** Null while it is being read. */
  readonly why: string | null;
}

export interface Intake {
  readonly arriving: readonly Arriving[];
  readonly take: (files: readonly File[]) => void;
  readonly dismiss: (key: string) => void;
}

const LONGEST_NAME = 200;

export function useIntake(films: readonly FilmState[], append: Append): Intake {
  const [arriving, setArriving] = useState<readonly Arriving[]>([]);
  const dismiss = useCallback((key: string) => setArriving((now) => now.filter((file) => file.key !== key)), []);
  const take = async (files: readonly File[]) => {
    const known = new Set(films.map(({ file }) => file.value.sha256));
    const keyed = files.map((file) => ({ key: randomId(), file }));
    setArriving((now) => [...now, ...keyed.map(({ key, file }) => ({ key, name: file.name, why: null }))]);
    // One after the other: two large films at once could need more memory than a tablet has.
    for (const { key, file } of keyed) {
      const why = await takeOne(file, known, append);
      if (why === null) dismiss(key);
      else setArriving((now) => now.map((line) => (line.key === key ? { ...line, why } : line)));
    }
  };
  return { arriving, take: (files) => void take(files), dismiss };
}

/** Null when the film is in the case, otherwise why not. */
async function takeOne(file: File, known: Set<string>, append: Append): Promise<string | null> {
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const film = await OpenFilm.open(bytes, file.name);
    const { sha256, rows, cols, header } = film.facts;
    if (known.has(sha256)) {
      film.close();
      return `${file.name} is in this case already.`;
    }
    known.add(sha256);
    putOnShelf(sha256, Promise.resolve(film));
    await keepFile(sha256, bytes);
    const payload = {
      filmId: randomId(),
      sha256,
      fileName: file.name.slice(-LONGEST_NAME),
      byteLength: bytes.length,
      rows,
      cols,
      view: null,
      takenAt: takenAt(header),
    };
    append([{ kind: 'film-added', payload }]);
    return null;
  } catch (error) {
    if (error instanceof InputError) return named(file.name, faultLine(error));
    const why = error instanceof Error ? error.message : String(error);
    return `${file.name} was not taken in, by a fault of Bonewright's own: ${why}. The file itself is unharmed.`;
  }
}

const named = (name: string, line: string): string => (line.startsWith(name) ? line : `${name}: ${line}`);

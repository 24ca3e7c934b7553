/** A film from its bytes: opened, hashed, and what the record will say of it. */
import type { FilmState, Payload } from '@bonewright/casebook';
import { randomId } from '../../sync/random-id.ts';
import { fileHash } from '../engine/file-hash.ts';
import { OpenFilm } from '../engine/open-film.ts';
import { takenAt } from './taken-at.ts';

export interface FilmSaid {
  readonly fileName: string;
  /** Squared up from a photograph. */
  readonly isPhotograph?: boolean;
}

interface Opened {
  readonly film: OpenFilm;
  readonly payload: Payload<'film-added'>;
}

const LONGEST_NAME = 200;

/** Throws InputError where the bytes are no film. */
export async function openToTake(
  { fileName, isPhotograph = false }: FilmSaid,
  bytes: Uint8Array<ArrayBuffer>,
): Promise<Opened> {
  // Where the browser makes hashes it does so beside the decoding; else the film's thread does, after it.
  const early = isSecureContext ? fileHash(bytes) : null;
  const film = await OpenFilm.open(bytes, fileName);
  const { rows, cols, header } = film.facts;
  const payload = {
    filmId: randomId(),
    sha256: await (early ?? film.sha256()),
    fileName: fileName.slice(-LONGEST_NAME),
    byteLength: bytes.length,
    rows,
    cols,
    view: null,
    takenAt: takenAt(header),
    ...(isPhotograph ? { photograph: true as const } : {}),
  };
  return { film, payload };
}

/** The film as the case will have it, before it is recorded. */
export function asFilm(payload: Payload<'film-added'>): FilmState {
  const unsigned = { seq: 0, at: new Date().toISOString(), by: '' };
  return {
    filmId: payload.filmId,
    file: { value: payload, ...unsigned },
    view: { value: payload.view, ...unsigned },
    calibration: null,
    clicks: null,
    trace: null,
    fractureLine: null,
  };
}

/** What of the unfinished work on a film can be recorded now; the rest stays unfinished. */
import type { FilmState } from '@bonewright/casebook';
import type { Pixel } from '@bonewright/film';
import type { NewEvent } from '../../sync/new-event.ts';
import { calibrationOf } from './calibration-draft.ts';
import { type Unfinished, workingOf } from './working.ts';

export interface Settled {
  readonly events: readonly NewEvent[];
  readonly unfinished: Unfinished;
}

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Entries for every group of marks that is whole and differs from the record. */
export function settle(film: FilmState, unfinished: Unfinished): Settled {
  const working = workingOf(film, unfinished);
  const { filmId } = film;
  const events: NewEvent[] = [];
  let rest = unfinished;
  const record = (event: NewEvent, isRecorded: boolean, ...keys: (keyof Unfinished)[]) => {
    if (!isRecorded) events.push(event);
    rest = without(rest, keys);
  };

  const calibration = calibrationOf(working.calibration);
  if (unfinished.calibration && calibration)
    record(
      { kind: 'film-calibrated', payload: { filmId, calibration } },
      isSame(calibration, film.calibration?.value),
      'calibration',
    );

  const [c1, c2, c3, c4] = working.clicks;
  const { towards } = working;
  const [proximalEnd, distalEnd] = working.ends;
  const isTouched = unfinished.clicks || unfinished.towards || (unfinished.ends && proximalEnd && distalEnd);
  if (isTouched && c1 && c2 && c3 && c4 && towards) {
    const ends = proximalEnd && distalEnd ? { boneEnds: [proximalEnd, distalEnd] as [Pixel, Pixel] } : {};
    const clicks = {
      segments: [
        { name: 'proximal', from: c1, to: c2 },
        { name: 'distal', from: c3, to: c4 },
      ],
      columnTowards: towards,
      ...ends,
    };
    record(
      { kind: 'film-clicked', payload: { filmId, ...clicks } },
      isSame(clicks, film.clicks?.value),
      'clicks',
      'towards',
      ...(proximalEnd && distalEnd ? (['ends'] as const) : []),
    );
  }

  const [from, to] = working.fracture;
  if (unfinished.fracture && from && to)
    record(
      { kind: 'fracture-marked', payload: { filmId, line: [from, to] } },
      isSame([from, to], film.fractureLine?.value),
      'fracture',
    );
  return { events, unfinished: rest };
}

function without(unfinished: Unfinished, keys: readonly string[]): Unfinished {
  return Object.fromEntries(Object.entries(unfinished).filter(([key]) => !keys.includes(key)));
}

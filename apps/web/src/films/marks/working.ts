/**
 * What is marked on a film: the record, and over it what is not yet whole enough to record (two clicks of four, half a
 * number). The unfinished part is a plain record kept on this device.
 */
import type { FilmState, View } from '@bonewright/casebook';
import type { Towards } from '@bonewright/film';
import { type CalibrationDraft, calibrationDraft } from './calibration-draft.ts';
import { type MaybePixel, readPixels } from './pixel.ts';

export type FourClicks = readonly [MaybePixel, MaybePixel, MaybePixel, MaybePixel];
export type TwoClicks = readonly [MaybePixel, MaybePixel];

export interface Working {
  /** The side of the patient at the right edge; null until somebody says. */
  readonly towards: Towards | null;
  readonly calibration: CalibrationDraft;
  /** 1 and 2 along the proximal part, 3 and 4 along the distal part. */
  readonly clicks: FourClicks;
  readonly fracture: TwoClicks;
  /** Proximal and distal end of the bone, where they are marked. */
  readonly ends: TwoClicks;
}

/** Only what differs from the record. */
export type Unfinished = Partial<Working>;

const NO_PAIR: TwoClicks = [null, null];
const NO_CLICKS: FourClicks = [null, null, null, null];

/** `usualBallMm` is offered where nobody gave a diameter yet. */
export function workingOf(film: FilmState, unfinished: Unfinished, usualBallMm = ''): Working {
  const all = { ...recorded(film, usualBallMm), ...unfinished };
  const sides = film.view.value && sidesOf(film.view.value);
  const fits = sides && all.towards && sides.includes(all.towards);
  return fits ? all : { ...all, towards: null };
}

/** What the right edge of a view can show. */
export const sidesOf = (view: View): readonly [Towards, Towards] =>
  view === 'craniocaudal' ? ['medial', 'lateral'] : ['cranial', 'caudal'];

function recorded(film: FilmState, usualBallMm: string): Working {
  const clicks = film.clicks?.value;
  const [proximal, distal] = clicks?.segments ?? [];
  return {
    towards: clicks?.columnTowards ?? null,
    calibration: calibrationDraft(film.calibration?.value ?? { diameterMm: usualBallMm }),
    clicks: proximal && distal ? [proximal.from, proximal.to, distal.from, distal.to] : NO_CLICKS,
    fracture: film.fractureLine?.value ?? NO_PAIR,
    ends: clicks?.boneEnds ?? NO_PAIR,
  };
}

/** What was kept on this device; anything unreadable counts as nothing. */
export function readUnfinished(kept: unknown): Unfinished {
  if (typeof kept !== 'object' || kept === null) return {};
  const said = new Map<string, unknown>(Object.entries(kept));
  const towards = TOWARDS.find((side) => side === said.get('towards'));
  const [c1, c2, c3, c4] = readPixels(said.get('clicks'), 4);
  return {
    ...(towards ? { towards } : {}),
    ...(said.has('calibration') ? { calibration: calibrationDraft(said.get('calibration')) } : {}),
    ...(c1 !== undefined && c2 !== undefined && c3 !== undefined && c4 !== undefined
      ? { clicks: [c1, c2, c3, c4] }
      : {}),
    ...pairNamed('fracture', said),
    ...pairNamed('ends', said),
  };
}

const TOWARDS: readonly Towards[] = ['medial', 'lateral', 'cranial', 'caudal'];

function pairNamed(name: 'fracture' | 'ends', said: ReadonlyMap<string, unknown>): Unfinished {
  const [from, to] = readPixels(said.get(name), 2);
  return from !== undefined && to !== undefined ? { [name]: [from, to] } : {};
}

/** Where a pin really went, as it is being typed. The place is kept; the landmark only says how it is read. */
import { type InTheatre, type Landmark, type PlacedPin, placeFrom } from '@bonewright/construct';
import { InputError } from '@bonewright/fault';

/** `proximal end`, `distal end`, or `P2`. */
export type From = string;

export interface EntryDraft extends PlacedPin {
  readonly from: From;
}

/** Reads what this device kept; null where that is nothing, or of another pin. */
export function readDraft(kept: unknown): EntryDraft | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const { pin, sMm, aboutDeg, tiltDeg, cortices, from } = { ...NO_DRAFT, ...kept };
  const isWhole =
    [pin, sMm, aboutDeg, tiltDeg].every((each) => Number.isFinite(each)) && (cortices === 1 || cortices === 2);
  if (!isWhole || typeof from !== 'string') return null;
  return { pin: Number(pin), sMm: Number(sMm), aboutDeg: Number(aboutDeg), tiltDeg: Number(tiltDeg), cortices, from };
}

const NO_DRAFT: Readonly<Record<keyof EntryDraft, unknown>> = {
  pin: null,
  sMm: null,
  aboutDeg: null,
  tiltDeg: null,
  cortices: null,
  from: null,
};

/** Landmarks that one can measure from: the ends, and pins that stand, the nearest first. */
export function landmarksFor({ placed }: InTheatre, pin: number, sMm: number): From[] {
  const near = placed
    .filter((each) => each.pin !== pin)
    .toSorted((a, b) => Math.abs(a.sMm - sMm) - Math.abs(b.sMm - sMm));
  return ['proximal end', 'distal end', ...near.map((each) => `P${each.pin}`)];
}

function landmarkOf(from: From, { placed }: InTheatre, pin: number): Landmark {
  const other = placed.find((each) => from === `P${each.pin}`);
  if (other) return { from: 'pin', atMm: other.sMm, towards: other.pin < pin ? 'distal' : 'proximal' };
  return { from: from === 'distal end' ? 'distal end' : 'proximal end' };
}

/** How far the draft stands from its landmark. */
export function distanceOf({ from, pin, sMm }: EntryDraft, theatre: InTheatre, lengthMm: number): number {
  const landmark = landmarkOf(from, theatre, pin);
  if (landmark.from === 'pin') return landmark.towards === 'distal' ? sMm - landmark.atMm : landmark.atMm - sMm;
  return landmark.from === 'distal end' ? lengthMm - sMm : sMm;
}

/** A tenth of a millimetre is finer than a rule is read. */
const TENTHS = 10;

/** The draft so far from its landmark; unchanged where that is off the bone. */
export function atDistance(draft: EntryDraft, theatre: InTheatre, lengthMm: number, distanceMm: number): EntryDraft {
  try {
    const sMm = placeFrom(lengthMm, landmarkOf(draft.from, theatre, draft.pin), distanceMm);
    return { ...draft, sMm: Math.round(sMm * TENTHS) / TENTHS };
  } catch (error) {
    if (error instanceof InputError) return draft;
    throw error;
  }
}

export function placedOf({ pin, sMm, aboutDeg, tiltDeg, cortices }: EntryDraft): PlacedPin {
  return { pin, sMm, aboutDeg, tiltDeg, cortices };
}

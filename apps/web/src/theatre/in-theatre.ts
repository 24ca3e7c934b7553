/** The record of theatre as the mechanics read it, and what each pin of the plan is doing. */
import type { CaseState } from '@bonewright/casebook';
import type { InTheatre, PlacedPin } from '@bonewright/construct';

/** Pins of the record that the plan has; others were placed for an earlier plan. */
export function inTheatreOf({ theatre }: Pick<CaseState, 'theatre'>, pinCount: number): InTheatre {
  const pins = theatre.pins.filter(({ pin }) => pin <= pinCount);
  return {
    placed: pins.flatMap(({ placed }) => (placed ? [placedPin(placed.value)] : [])),
    refused: pins.flatMap(({ pin, placed, leftOut, tried }) =>
      placed || leftOut
        ? []
        : tried.flatMap(({ value }) => (value.triedMm === null ? [] : [{ pin, sMm: value.triedMm }])),
    ),
    leftOut: pins.flatMap(({ pin, leftOut }) => (leftOut ? [pin] : [])),
  };
}

function placedPin({ pin, sMm, aboutDeg, tiltDeg, cortices }: PlacedPin): PlacedPin {
  return { pin, sMm, aboutDeg, tiltDeg, cortices };
}

/** The same with one pin standing where a hand is about to say it does. */
export function withPlaced(theatre: InTheatre, pin: PlacedPin): InTheatre {
  return {
    placed: [...theatre.placed.filter((each) => each.pin !== pin.pin), pin],
    refused: theatre.refused.filter((each) => each.pin !== pin.pin),
    leftOut: theatre.leftOut.filter((each) => each !== pin.pin),
  };
}

export type PinDoing = 'in' | 'left out' | 'now' | 'next';

export function doingOf({ placed, leftOut }: InTheatre, pin: number, now: number): PinDoing {
  if (placed.some((each) => each.pin === pin)) return 'in';
  if (leftOut.includes(pin)) return 'left out';
  return pin === now ? 'now' : 'next';
}

/** The first pin that is neither in nor left out; null where none is left to do. */
export function firstToDo({ placed, leftOut }: InTheatre, pinCount: number): number | null {
  const done = new Set([...placed.map(({ pin }) => pin), ...leftOut]);
  const all = Array.from({ length: pinCount }, (_, i) => i + 1);
  return all.find((pin) => !done.has(pin)) ?? null;
}

/** Whether the plan was changed after a pin of the earlier one went in: numbers may not mean the same pins. */
export function isOtherPlan({ theatre, construct }: Pick<CaseState, 'theatre' | 'construct'>): boolean {
  return theatre.pins.some(({ placed }) => placed !== null && construct !== null && construct.seq > placed.seq);
}

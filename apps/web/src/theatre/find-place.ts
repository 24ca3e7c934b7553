/** Where the pin in hand should go, found from the landmarks of what already stands. */
import { type Advice, type AsPlaced, type Case, type Construct, findPin, type InTheatre } from '@bonewright/construct';
import type { PinInHand } from './pin-by-pin.tsx';
import { withPinIn } from './with-pin-in.ts';

export interface Place {
  readonly found: ReturnType<typeof findPin>;
  readonly plannedPin: Construct['pins'][number];
  /** The plan's number of each pin that the landmarks count by. */
  readonly numbers: readonly number[];
  readonly advice: Advice | null;
}

export function findPlace(
  patientCase: Case,
  planned: Construct,
  theatre: InTheatre,
  { pin, wantedMm }: PinInHand,
  standing: AsPlaced,
): Place {
  const { construct, index, inAlready, numbers } = withPinIn(standing, planned, theatre, pin, wantedMm);
  return {
    found: findPin(patientCase, construct, index, inAlready),
    plannedPin: planned.pins[pin - 1]!,
    numbers,
    advice: standing.remaining.find((each) => each.pin === pin) ?? null,
  };
}

export const wallsWords = (cortices: number): string => (cortices === 2 ? 'through both' : 'not through the far one');

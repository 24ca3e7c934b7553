/** Does each pin enter, and in a two-sided frame leave, through a corridor without vessels, nerves or much muscle? */
import type { Case } from '../model/case-file.ts';
import type { Check } from '../model/plan.ts';
import type { CheckContext, CheckedPin } from './context.ts';
import { judged, unmeasured } from './limits.ts';
import { inDegrees, inMm, pinName } from './words.ts';

const LIMITS = { worse: 'above', watch: null, stop: 0 } as const;
const HALF_TURN = 180;

export type Corridor = NonNullable<Case['corridors']>[number];

export function corridor({ pins, columns, case: { corridors, bone } }: CheckContext): Check[] {
  if (!corridors || corridors.length === 0) {
    const because = `No safe corridor is marked for this ${bone.name}: look up nerves and vessels before each stab.`;
    return [unmeasured('corridor', 'deg', 'watch', because, [])];
  }
  const runsThrough = columns.some(({ side }) => side === 'far');
  return pins.map((pin) => pinCorridor(pin, corridors, runsThrough));
}

function pinCorridor(pin: CheckedPin, corridors: readonly Corridor[], runsThrough: boolean): Check {
  const here = corridorsAt(corridors, pin.sMm);
  const name = pinName(pin.index);
  if (here.length === 0) {
    const because = `${name} at ${inMm(pin.sMm)} lies where no safe corridor is marked.`;
    return unmeasured('corridor', 'deg', 'stop', because, [], pin.index + 1);
  }
  const ways = runsThrough ? [pin.aboutDeg, pin.aboutDeg + HALF_TURN] : [pin.aboutDeg];
  const outside = Math.max(...ways.map((way) => Math.min(...here.map((c) => degreesOutside(c.aboutDeg, way)))));
  return judged({
    id: 'corridor',
    pin: pin.index + 1,
    value: outside,
    unit: 'deg',
    limits: LIMITS,
    shown: inDegrees,
    says:
      outside > 0 ? `${name} is ${inDegrees(outside)} outside the safe corridor` : `${name} is in the safe corridor`,
    evidence: [],
  });
}

/** The corridors that are open at that place. */
export const corridorsAt = (corridors: readonly Corridor[], sMm: number): Corridor[] =>
  corridors.filter(({ fromMm, toMm }) => fromMm <= sMm && sMm <= toMm);

/** Degrees from `way` to the nearer edge of the arc that runs from the first to the second angle; 0 inside. */
export function degreesOutside([from, to]: readonly [number, number], way: number): number {
  const width = to - from;
  if (width >= 2 * HALF_TURN) return 0;
  const past = turn(way - from);
  const arc = turn(width);
  return past <= arc ? 0 : Math.min(past - arc, 2 * HALF_TURN - past);
}

const turn = (deg: number): number => ((deg % (2 * HALF_TURN)) + 2 * HALF_TURN) % (2 * HALF_TURN);

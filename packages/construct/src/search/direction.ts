/** The one direction about the bone in which all pins of a frame go in: the middle of a safe corridor, else medial. */
import { type Corridor, corridorsAt, degreesOutside } from '../checks/corridor.ts';
import type { Case } from '../model/case-file.ts';

/** Directions are named in whole steps: nobody aims finer by eye. */
const STEP_DEG = 5;
const LOOKS = 40;

/** Degrees about the bone, 0 medial. Of all corridors' middles the one open along most of the shorter-served fragment. */
export function frameDirection({ corridors, bone, fracture }: Case): number {
  if (!corridors || corridors.length === 0) return 0;
  const places = Array.from({ length: LOOKS + 1 }, (_, i) => (bone.lengthMm * i) / LOOKS);
  const openAt = (way: number) => places.filter((s) => isOpen(corridors, s, way));
  const served = (way: number) => {
    const open = openAt(way);
    const proximal = open.filter((s) => s < fracture.fromMm).length;
    return Math.min(proximal, open.filter((s) => s > fracture.toMm).length) * LOOKS + open.length;
  };
  return middles(corridors).reduce((best, way) => (served(way) > served(best) ? way : best));
}

const isOpen = (corridors: readonly Corridor[], sMm: number, way: number): boolean =>
  corridorsAt(corridors, sMm).some(({ aboutDeg }) => degreesOutside(aboutDeg, way) === 0);

/** The middle of what each two corridors share comes before the middle of either alone. */
function middles(corridors: readonly Corridor[]): number[] {
  const arcs = corridors.map(({ aboutDeg }) => aboutDeg);
  const shared = arcs.flatMap((a) => arcs.map((b) => [Math.max(a[0], b[0]), Math.min(a[1], b[1])] as const));
  return [...shared, ...arcs].filter(([from, to]) => to >= from).map(middleOf);
}

/** Rounded to a step where the arc holds it. */
function middleOf([from, to]: readonly [number, number]): number {
  const middle = (from + to) / 2;
  const stepped = Math.round(middle / STEP_DEG) * STEP_DEG;
  const held = stepped >= from && stepped <= to ? stepped : middle;
  return held === 0 ? 0 : held;
}

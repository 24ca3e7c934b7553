/** Places of a plan that can be found again on a later film: ends of the bone, its walls at the fracture, its pins. */
import type { Towards } from '../model/trace.ts';
import type { Match, PlanPoint } from './place-plan.ts';
import type { RodFigure } from './planned-rods.ts';

/** What is read of a figure; the construct package's `ViewFigure` is one. */
export interface LandmarkFigure extends RodFigure {
  readonly lengthMm: number;
  /** Proximal, then distal; each its w low and w high wall. */
  readonly fragments: readonly { readonly outer: readonly [readonly PlanPoint[], readonly PlanPoint[]] }[];
}

export interface Landmark {
  readonly id: string;
  readonly words: string;
  readonly at: PlanPoint;
}

/** The first three are the usual ones: bone only, so that a pin gone astray does not take the plan with it. */
export function planLandmarks(figure: LandmarkFigure): readonly Landmark[] {
  const [proximal] = figure.fragments;
  const pins = figure.pins.flatMap(({ line, nearWall }, i): Landmark[] => [
    { id: `P${i + 1}-wall`, words: `P${i + 1} where it meets the bone`, at: nearWall },
    { id: `P${i + 1}-tip`, words: `tip of P${i + 1}`, at: line[0]! },
  ]);
  return [
    { id: 'proximal-end', words: 'proximal end of the bone', at: [0, 0] },
    { id: 'distal-end', words: 'distal end of the bone', at: [figure.lengthMm, 0] },
    ...(proximal ? [{ id: 'fracture', words: 'middle of the bone at the fracture', at: brokenEnd(proximal) }] : []),
    ...pins,
    ...(figure.im ? [{ id: 'IM-tip', words: 'tip of the IM pin', at: figure.im.line.at(-1)! }] : []),
  ];
}

function brokenEnd({ outer: [low, high] }: LandmarkFigure['fragments'][number]): PlanPoint {
  const [a, b] = [low.at(-1)!, high.at(-1)!];
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

/** The sine below which the bone lies so nearly along the rows that the film's edges do not tell its sides. */
const LEVEL = 0.2;

/**
 * Whether the plan's w runs against the film's own sense, from which side lies to the right; undefined where the bone
 * lies along the rows, or the points do not say how it lies.
 */
export function mirroredBy(matches: readonly Match[], columnTowards: Towards): boolean | undefined {
  const ordered = matches.toSorted((a, b) => a.plan[0] - b.plan[0]);
  const [first, last] = [ordered[0], ordered.at(-1)];
  if (!first || !last || first.plan[0] === last.plan[0]) return undefined;
  const [dc, dr] = [last.film[0] - first.film[0], last.film[1] - first.film[1]];
  // a quarter turn from the bone's way has this column part
  const right = -dr / Math.hypot(dc, dr);
  if (!(Math.abs(right) > LEVEL)) return undefined;
  return right > 0 !== (columnTowards === 'medial' || columnTowards === 'cranial');
}

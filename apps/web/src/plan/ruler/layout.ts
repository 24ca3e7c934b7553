/** How large the ruler's drawing is and where its parts stand, in pixels. */
import type { Case } from '@bonewright/construct';
import type { Placement } from '../../drawing/geometry/placement.ts';
import { inPlane, type SideProfile } from '../../drawing/geometry/side-profile.ts';
import { type Scale, scaleOf } from '../../drawing/scale.ts';

const LABELS_PX = 78;
/** Narrower than this the words at the left are left out. */
const LEAST_FOR_LABELS_PX = 500;
export const BALLOON_PX = 14;
const RIGHT_PX = 18;
const ABOVE_PX = 2 * BALLOON_PX + 10;
/** From the lowest thing to the ruler. */
const BELOW_PX = 14;
const RULER_PX = 34;
const APART_PX = 26;
/** Where the drawing would grow past this it is drawn smaller, never stretched one way. */
const MOST_PX_PER_MM = 18;
const LEAST_PX_PER_MM = 2;

export interface RulerLayout {
  readonly placement: Placement;
  readonly profile: SideProfile;
  readonly scale: Scale;
  readonly widthPx: number;
  readonly hasLabels: boolean;
  readonly heightPx: number;
  readonly lengthMm: number;
  /** Height of the lowest thing drawn, h in mm. */
  readonly lowMm: number;
  readonly rulerY: number;
  readonly apartY: number;
  readonly balloonY: number;
}

/** `profile`: the bone cut in the frame's plane, found once for as long as that plane stays. */
export function layOut(
  { bone: { lengthMm } }: Case,
  placement: Placement,
  profile: SideProfile,
  widthPx: number,
  mostHeightPx: number,
): RulerLayout {
  const points = everyPoint(placement, profile);
  const s = points.map(([along]) => along);
  const h = points.map(([, height]) => height);
  const low = steady(Math.min(...h), Math.floor);
  const high = steady(Math.max(...h), Math.ceil);
  const left = steady(Math.min(0, ...s), Math.floor);
  const right = Math.max(lengthMm, steady(Math.max(...s), Math.ceil));
  const labelsPx = widthPx < LEAST_FOR_LABELS_PX ? 0 : LABELS_PX;
  const byWidth = (widthPx - labelsPx - RIGHT_PX - 2 * BALLOON_PX) / (right - left);
  const byHeight = (mostHeightPx - ABOVE_PX - BELOW_PX - RULER_PX - APART_PX) / (high - low);
  const pxPerMm = Math.max(LEAST_PX_PER_MM, Math.min(byWidth, byHeight, MOST_PX_PER_MM));
  const scale = scaleOf(pxPerMm, labelsPx + BALLOON_PX - left * pxPerMm, ABOVE_PX + high * pxPerMm);
  const rulerY = scale.y(low) + BELOW_PX;
  return {
    placement,
    profile,
    scale,
    widthPx,
    hasLabels: labelsPx > 0,
    heightPx: rulerY + RULER_PX + APART_PX,
    lengthMm,
    lowMm: low,
    rulerY,
    apartY: rulerY + RULER_PX + APART_PX / 3,
    balloonY: BALLOON_PX + 4,
  };
}

/** The drawing's edges lie on whole steps: a drag must not make the scale tremble. */
const STEADY_MM = 2;

const steady = (mm: number, round: (steps: number) => number): number => round(mm / STEADY_MM) * STEADY_MM;

function everyPoint(placement: Placement, profile: SideProfile) {
  const { aboutDeg, pins, columns, im } = placement;
  const columnEdges = columns.flatMap(({ line, diameterMm }) =>
    line.flatMap((point) => {
      const [s, h] = inPlane(point, aboutDeg);
      const radius = diameterMm / 2;
      return [[s - radius, h - radius] as const, [s + radius, h + radius] as const];
    }),
  );
  return [
    ...pins.flatMap((pin) => [inPlane(pin.tip, aboutDeg), inPlane(pin.end, aboutDeg)]),
    ...columnEdges,
    ...(im?.line.map((point) => inPlane(point, aboutDeg)) ?? []),
    ...profile.fragments.flatMap(({ outline }) => outline),
    ...profile.skin,
  ];
}

/**
 * Balloon centres pushed apart until none overlaps, each as near as can be to where it is wanted: neighbours that
 * would overlap form a block around their mean (pool adjacent violators). x in pixels, any order.
 */
export function spreadBalloons(wanted: readonly number[]): number[] {
  const room = 2 * BALLOON_PX + 4;
  const order = wanted.map((_, i) => i).toSorted((a, b) => wanted[a]! - wanted[b]!);
  const blocks: { sum: number; count: number }[] = [];
  order.forEach((i, rank) => {
    let block = { sum: wanted[i]! - rank * room, count: 1 };
    for (let last = blocks.at(-1); last && mean(last) > mean(block); last = blocks.at(-1)) {
      block = { sum: block.sum + last.sum, count: block.count + last.count };
      blocks.pop();
    }
    blocks.push(block);
  });
  const starts = blocks.flatMap((block) => Array.from({ length: block.count }, () => mean(block)));
  const placed = [...wanted];
  for (const [rank, i] of order.entries()) placed[i] = starts[rank]! + rank * room;
  return placed;
}

const mean = ({ sum, count }: { readonly sum: number; readonly count: number }): number => sum / count;

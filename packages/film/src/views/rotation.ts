/**
 * A turn of the distal fragment about the bone, where the widths of the two fragments in two views show one.
 * The width of an ellipse seen along a direction obeys w^2 = S + D cos 2(direction - turn), S = (w1^2 + w2^2) / 2 in
 * square views. With the less changed fragment taken to lie square to the views, D is its difference, and the other's
 * turn follows. Its sense does not show, nor a turn of sections that are nearly round.
 */
import { value } from '@bonewright/evidence';
import type { Measured, TracedSegment, TracedView } from '../model/trace.ts';
import { lineFrame } from '../trace/frame.ts';
import { crossing } from './traced-fragment.ts';

/** 0 to 90 degrees without a sense: the widths are the same turned either way. */
export type RotationFromWidths = Measured;

type Pair<T> = readonly [T, T];

/** Widths nearest the fracture that count, in bone widths along. */
const NEAR_WIDTHS = 1.5;
/** A difference of widths is one from so many of its sds. */
const SURE_SDS = 4;

/** Outer width of a fragment near the fracture: mean of the stations within reach of the one nearest to it. */
export function widthAtFracture(segment: TracedSegment, view: TracedView): Measured {
  const mm = view.trace.mmPerPixel.value!;
  const at = crossing(lineFrame(segment.axis.from, segment.axis.to), view.fractureLine) * mm;
  const read = segment.stations.flatMap(({ sMm, outerMm: { value: w, sd } }) =>
    w === null || sd === null ? [] : [{ away: Math.abs(sMm - at), w, sd }],
  );
  const nearest = read.toSorted((a, b) => a.away - b.away)[0];
  if (!nearest) return { value: null, sd: null, why: `no width of the ${segment.name} fragment could be read` };
  const near = read.filter((r) => r.away <= nearest.away + NEAR_WIDTHS * nearest.w);
  const mean = (pick: (r: (typeof near)[number]) => number) => near.reduce((t, r) => t + pick(r), 0) / near.length;
  // neighbours share their errors: the sd of the mean is that of one
  return { value: mean((r) => r.w), sd: mean((r) => r.sd) };
}

/** `widthsMm[view][fragment]`. Null, with the reason, where the widths do not show a turn. */
export function rotationFromWidths(widthsMm: Pair<Pair<Measured>>, betweenViewsDeg: number): RotationFromWidths {
  const none = (why: string): Measured => ({ value: null, sd: null, why });
  if (Math.abs(betweenViewsDeg - 90) > value('alignment.rotation.square-views')) {
    return none('the views are too far from square to show a turn');
  }
  const missing = widthsMm.flat().find((m) => m.value === null);
  if (missing) return none(missing.why ?? 'a width is missing');
  const fragments = ([0, 1] as const).map((k) => ellipse(widthsMm[0][k], widthsMm[1][k]));
  const [p, d] = fragments as [Ellipse, Ellipse];
  const size = Math.sqrt(d.sum / p.sum) - 1;
  if (Math.abs(size) > value('alignment.rotation.size-difference')) {
    return none('the fragments differ in size at the fracture: their widths cannot be compared');
  }
  const [less, more] = Math.abs(p.difference) < Math.abs(d.difference) ? [p, d] : [d, p];
  const aspect = Math.sqrt((more.sum + Math.abs(more.difference)) / (more.sum - Math.abs(more.difference)));
  if (aspect < value('alignment.rotation.least-aspect') || Math.abs(more.difference) < SURE_SDS * more.sd) {
    return none('the bone is too round at the fracture to show a turn');
  }
  const cos = less.difference / more.difference;
  const turn = (c: number) => ((Math.acos(Math.min(1, Math.max(-1, c))) / 2) * 180) / Math.PI;
  const sdCos = Math.hypot(less.sd, cos * more.sd) / Math.abs(more.difference);
  const found = turn(cos);
  const step = Math.max(Math.abs(turn(cos + sdCos) - found), Math.abs(turn(cos - sdCos) - found));
  return { value: found, sd: Math.hypot(step, value('alignment.rotation.model-sd')) };
}

/** Half sum and half difference of the squared widths, with the sd of the latter. */
interface Ellipse {
  readonly sum: number;
  readonly difference: number;
  readonly sd: number;
}

function ellipse(a: Measured, b: Measured): Ellipse {
  const [p, q] = [a.value!, b.value!];
  return { sum: (p * p + q * q) / 2, difference: (p * p - q * q) / 2, sd: Math.hypot(p * a.sd!, q * b.sd!) };
}

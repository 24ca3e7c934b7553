/**
 * Measurements by hand: points placed on the film to a length, an angle or a diameter with its standard deviation.
 * Each point is uniform within one pixel; lengths are millimetres at the bone, or pixels where there is no scale.
 */
import { value } from '@bonewright/evidence';
import type { Measured, Pixel } from '../model/trace.ts';
import { coordinatesOf, lineFrame } from '../trace/frame.ts';

/** A measurement by hand; `unit` says what its value is in, `why` why it has none. */
export interface HandMeasured extends Measured {
  readonly unit: 'mm' | 'px' | 'deg';
  /** Why a length stayed in pixels. */
  readonly noScale?: string;
}

/** Points nearer than this say nothing of a direction. */
const SHORTEST_LEG_PX = 3;

/** The distance between two points. Null where they are the same. `mmPerPixel` is the scale at the bone. */
export function lengthByHand(a: Pixel, b: Pixel, mmPerPixel: Measured): HandMeasured {
  const px = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (px === 0) return { value: null, sd: null, unit: 'px', why: 'both points are the same' };
  return scaled(px, Math.SQRT2 * value('measure.click.sd'), mmPerPixel);
}

/** The angle at the middle one of three points, 0 to 180 degrees. */
export function angleByHand(a: Pixel, vertex: Pixel, b: Pixel): HandMeasured {
  return angleOf([vertex, a], [vertex, b], 'vertex');
}

/**
 * The angle from the first line to the second, each drawn by two points in the same sense, -180 to 180 degrees,
 * positive from +column towards +row: as a trace's angulation.
 */
export function angleOfLines(first: readonly [Pixel, Pixel], second: readonly [Pixel, Pixel]): HandMeasured {
  return angleOf(first, second, 'apart');
}

/**
 * The width across at a place: two edges placed by hand, measured square to the axis drawn by two points (or traced).
 * Null where the edges lie more along the axis than across it.
 */
export function diameterByHand(
  axis: readonly [Pixel, Pixel],
  edges: readonly [Pixel, Pixel],
  mmPerPixel: Measured,
): HandMeasured {
  const frame = lineFrame(axis[0], axis[1]);
  const none = (why: string): HandMeasured => ({ value: null, sd: null, unit: 'px', why });
  if (!(frame.lengthPx >= SHORTEST_LEG_PX)) return none('the axis is too short to say which way is across');
  const [s0, x0] = coordinatesOf(frame, edges[0]);
  const [s1, x1] = coordinatesOf(frame, edges[1]);
  if (!(Math.abs(x1 - x0) > Math.abs(s1 - s0))) return none('the two edges do not lie across the axis');
  const click = value('measure.click.sd');
  const axisSd = (Math.SQRT2 * click) / frame.lengthPx;
  return scaled(Math.abs(x1 - x0), Math.hypot(Math.SQRT2 * click, (s1 - s0) * axisSd), mmPerPixel);
}

function scaled(px: number, sdPx: number, { value: mm, sd, why }: Measured): HandMeasured {
  if (mm === null) return { value: px, sd: sdPx, unit: 'px', noScale: why ?? 'the film has no scale' };
  return { value: px * mm, sd: Math.hypot(sdPx * mm, px * (sd ?? 0)), unit: 'mm' };
}

function angleOf(
  first: readonly [Pixel, Pixel],
  second: readonly [Pixel, Pixel],
  kind: 'vertex' | 'apart',
): HandMeasured {
  const a = lineFrame(first[0], first[1]);
  const b = lineFrame(second[0], second[1]);
  const shortest = Math.min(a.lengthPx, b.lengthPx);
  if (!(shortest >= SHORTEST_LEG_PX)) {
    return { value: null, sd: null, unit: 'deg', why: 'a leg of the angle is too short for its direction' };
  }
  const turn = Math.atan2(
    a.along[0] * b.along[1] - a.along[1] * b.along[0],
    a.along[0] * b.along[0] + a.along[1] * b.along[1],
  );
  // each end moves its leg by across / length; a shared vertex moves both legs at once
  const [u, v] = [a, b].map((f) => [f.across[0] / f.lengthPx, f.across[1] / f.lengthPx] as const);
  const starts = kind === 'vertex' ? [[v![0] - u![0], v![1] - u![1]] as const] : [u!, v!];
  const parts = [u!, v!, ...starts].flat();
  const sd = value('measure.click.sd') * Math.hypot(...parts);
  const deg = ((kind === 'vertex' ? Math.abs(turn) : turn) * 180) / Math.PI;
  return { value: deg, sd: (sd * 180) / Math.PI, unit: 'deg' };
}

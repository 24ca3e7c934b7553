/** One fragment in one view, read against the fracture: sizes and offset as functions of the distance from it. */
import type { Measured, Pixel, TracedSegment, TracedView } from '../model/trace.ts';
import { coordinatesOf, type LineFrame, lineFrame } from '../trace/frame.ts';

/** Values along one fragment of one view, all mm; t runs proximal to distal and is 0 at the fracture line. */
export interface FragmentView {
  readonly from: number;
  readonly to: number;
  readonly outer: Curve;
  readonly canal: Curve;
  /** Centre from the fragment's own straight axis, positive towards the film's +column. */
  readonly offset: Curve;
}

/** A measured quantity along t. */
export interface Curve {
  readonly t: readonly number[];
  readonly value: readonly number[];
  readonly sd: readonly number[];
}

export function fragmentView(segment: TracedSegment, view: TracedView, mmPerPixel: number): FragmentView {
  const frame = lineFrame(segment.axis.from, segment.axis.to);
  const zero = crossing(frame, view.fractureLine);
  const t = segment.stations.map((s) => (coordinatesOf(frame, s.centre)[0] - zero) * mmPerPixel);
  const side = columnward(frame);
  const curve = (pick: (i: number) => Measured | null): Curve => {
    const rows = segment.stations.flatMap((_, i) => {
      const m = pick(i);
      return m?.value != null && m.sd !== null ? [{ t: t[i]!, value: m.value, sd: m.sd }] : [];
    });
    return { t: rows.map((r) => r.t), value: rows.map((r) => r.value), sd: rows.map((r) => r.sd) };
  };
  return {
    from: (0 - zero) * mmPerPixel,
    to: (frame.lengthPx - zero) * mmPerPixel,
    outer: curve((i) => segment.stations[i]!.outerMm),
    canal: curve((i) => segment.stations[i]!.canalMm),
    offset: curve((i) => {
      const s = segment.stations[i]!;
      if (s.outerMm.value === null) return null;
      return { value: side * coordinatesOf(frame, s.centre)[1] * mmPerPixel, sd: (s.outerMm.sd ?? 0) / 2 };
    }),
  };
}

/** Where the bone's end lies along the fragment's axis, t in mm. */
export function endAt(segment: TracedSegment, view: TracedView, end: Pixel, mmPerPixel: number): number {
  const frame = lineFrame(segment.axis.from, segment.axis.to);
  return (coordinatesOf(frame, end)[0] - crossing(frame, view.fractureLine)) * mmPerPixel;
}

/** Angle of the fracture line from square to the fragment's axis, degrees, positive where its +column end lies distally. */
export function obliquity(segment: TracedSegment, view: TracedView): number {
  const frame = lineFrame(segment.axis.from, segment.axis.to);
  const [s0, x0] = coordinatesOf(frame, view.fractureLine[0]);
  const [s1, x1] = coordinatesOf(frame, view.fractureLine[1]);
  return (Math.atan((s1 - s0) / (x1 - x0)) * columnward(frame) * 180) / Math.PI;
}

/** +1 where the frame's across direction runs with the columns, -1 where it runs against them. */
export const columnward = (frame: LineFrame): 1 | -1 => (frame.across[0] >= 0 ? 1 : -1);

/** s where the line through the two clicks crosses the axis. */
export function crossing(frame: LineFrame, line: readonly [Pixel, Pixel]): number {
  const [s0, x0] = coordinatesOf(frame, line[0]);
  const [s1, x1] = coordinatesOf(frame, line[1]);
  return s0 - (x0 * (s1 - s0)) / (x1 - x0);
}

/** The straight axis of a corrected fragment, and the angle and offset between two of them. */
import { value } from '@bonewright/evidence';
import type { Measured, Trace, TracedSegment } from '../model/trace.ts';
import { coordinatesOf, type LineFrame, lineFrame, pointAt } from '../trace/frame.ts';
import { LEFT_OUT } from './correction.ts';

/** Least-squares line through stations' centres, in the frame of the axis. */
interface Line {
  readonly offset: number;
  readonly slope: number;
}

/**
 * The corrected fragment about its new axis. The old axis moves by what the corrections change in the least-squares
 * line through the centres, so that it stays as it is where nothing was corrected. Stations keep their `sMm`.
 */
export function withNewAxis(before: TracedSegment, after: TracedSegment): TracedSegment {
  const frame = lineFrame(before.axis.from, before.axis.to);
  const kept = after.stations.filter((s) => s.outerMm.why !== LEFT_OUT);
  const old = lineOf(before.stations, frame);
  const now = lineOf(kept.length > 2 ? kept : after.stations, frame);
  const offset = now.offset - old.offset;
  const slope = now.slope - old.slope;
  if (offset === 0 && slope === 0) return after;
  return {
    ...after,
    axis: { from: pointAt(frame, 0, offset), to: pointAt(frame, frame.lengthPx, offset + slope * frame.lengthPx) },
  };
}

function lineOf(stations: TracedSegment['stations'], frame: LineFrame): Line {
  const points = stations.map((s) => coordinatesOf(frame, s.centre));
  const n = points.length;
  const meanS = points.reduce((t, p) => t + p[0], 0) / n;
  const meanX = points.reduce((t, p) => t + p[1], 0) / n;
  const square = points.reduce((t, p) => t + (p[0] - meanS) ** 2, 0);
  const slope = square > 0 ? points.reduce((t, p) => t + (p[0] - meanS) * (p[1] - meanX), 0) / square : 0;
  return { offset: meanX - slope * meanS, slope };
}

/** Angle and offset of corrected fragments as the trace defines them; as before where no axis has moved. */
export function realigned(before: Trace, segments: readonly TracedSegment[]): Trace {
  const [a, b] = segments;
  const moved = segments.some((s, i) => s.axis !== before.segments[i]!.axis);
  if (!moved || !a || !b || before.angulationDeg.value === null) return { ...before, segments };
  const p = lineFrame(a.axis.from, a.axis.to);
  const d = lineFrame(b.axis.from, b.axis.to);
  const angle = Math.atan2(
    p.along[0] * d.along[1] - p.along[1] * d.along[0],
    p.along[0] * d.along[0] + p.along[1] * d.along[1],
  );
  // clicks at both ends of an axis would turn it by this much: nothing placed by hand does worse
  const click = value('measure.click.sd');
  const turnSd = Math.hypot(
    ...segments.map((s, i) => (s.axis === before.segments[i]!.axis ? 0 : click / [p, d][i]!.lengthPx)),
  );
  const angulationDeg = plusSd(before.angulationDeg, (angle * 180) / Math.PI, (turnSd * 180) / Math.PI);
  const { value: mm } = before.mmPerPixel;
  if (mm === null || before.translationMm.value === null) return { ...before, segments, angulationDeg };
  const [s, x] = coordinatesOf(p, d.from);
  const translation = (x + (p.lengthPx - s) * Math.tan(angle)) * mm;
  return { ...before, segments, angulationDeg, translationMm: plusSd(before.translationMm, translation, click * mm) };
}

const plusSd = (before: Measured, now: number, more: number): Measured => ({
  value: now,
  sd: Math.hypot(before.sd!, more),
});

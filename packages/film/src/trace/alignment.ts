/** Angle and offset between the axes of two fragments, with sd carried through from the fits. */
import { value } from '@bonewright/evidence';
import type { Measured } from '../model/trace.ts';
import { axisWeights } from './axis.ts';
import { coordinatesOf } from './frame.ts';
import { weightsAt } from './layout.ts';
import type { FittedSegment, NoBone } from './trace-segment.ts';

const none = (why: string): Measured => ({ value: null, sd: null, why });

export function alignment(
  fits: readonly (FittedSegment | NoBone)[],
  mmPerPixel: Measured,
): { angulationDeg: Measured; translationMm: Measured } {
  const [a, b] = fits;
  if (!a || !b) {
    const why = none('one fragment only: no angle between fragments');
    return { angulationDeg: why, translationMm: why };
  }
  if ('why' in a || 'why' in b) {
    const why = none('why' in a ? a.why : (b as NoBone).why);
    return { angulationDeg: why, translationMm: why };
  }
  const la = axisSd(a);
  const lb = axisSd(b);
  const angle = turned(a.frame.along, b.frame.along);
  const angleSd = Math.hypot(la.slopeSd, lb.slopeSd);
  const angleSdDeg = (angleSd * 180) / Math.PI;
  if (angleSdDeg > value('imaging.trace.angle-limit')) {
    const why = none('too little of a fragment can be read for its axis');
    return { angulationDeg: why, translationMm: why };
  }
  const angulationDeg = { value: (angle * 180) / Math.PI, sd: angleSdDeg };
  if (mmPerPixel.value === null || mmPerPixel.sd === null) {
    return { angulationDeg, translationMm: none(`no lengths: ${mmPerPixel.why ?? 'no scale'}`) };
  }
  // where the distal axis crosses the normal at the proximal axis's end
  const [s, x] = coordinatesOf(a.frame, b.frame.from);
  const back = a.frame.lengthPx - s;
  const px = x + back * Math.tan(angle);
  const along = back / Math.cos(angle);
  const distal = lb.offsetSdAt(along);
  const proximal = la.offsetSdAt(a.frame.lengthPx);
  const sdPx = Math.hypot(distal / Math.cos(angle), proximal);
  const mm = px * mmPerPixel.value;
  return {
    angulationDeg,
    translationMm: { value: mm, sd: Math.hypot(sdPx * mmPerPixel.value, (mm * mmPerPixel.sd) / mmPerPixel.value) },
  };
}

/** From the first direction to the second, radians, positive from +column towards +row. */
function turned(a: readonly [number, number], b: readonly [number, number]): number {
  return Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);
}

/** Sd of the slope and of the offset of the least-squares line through the midpoints, from the fit's covariance. */
function axisSd(fit: FittedSegment): { slopeSd: number; offsetSdAt(s: number): number } {
  const { model, covariance } = fit.fit;
  const length = fit.frame.lengthPx;
  const level = new Float64Array(model.c.length);
  const tilt = new Float64Array(model.c.length);
  for (const place of axisWeights(length)) {
    for (const [k, w] of weightsAt(model, 'co', place.s).entries()) {
      level[k]! += place.level * w;
      tilt[k]! += place.tilt * w;
    }
  }
  const { bone, overlap, metal } = fit.neighbours;
  const neighbour = Math.max(
    bone ? value('imaging.trace.axis-bone-factor') : 1,
    overlap ? value('imaging.trace.axis-overlap-factor') : 1,
    metal ? value('imaging.trace.axis-metal-factor') : 1,
  );
  const factor = neighbour * value('imaging.trace.axis-sd-factor') * fit.honesty.sdFactor;
  const floor = value('imaging.trace.sd-floor');
  const hidden = overlap ? value('imaging.trace.axis-overlap-sd') * fit.width : 0;
  const vTilt = factor ** 2 * covariance(tilt, tilt) + (floor / length) ** 2 * 12;
  const vLevel = factor ** 2 * covariance(level, level) + floor ** 2 + hidden ** 2;
  const cross = factor ** 2 * covariance(level, tilt);
  return {
    slopeSd: Math.sqrt(vTilt),
    offsetSdAt: (s) => {
      const d = s - length / 2;
      return Math.sqrt(Math.max(0, vLevel + 2 * d * cross + d * d * vTilt));
    },
  };
}

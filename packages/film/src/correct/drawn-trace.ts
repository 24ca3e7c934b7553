/** A trace drawn from known geometry instead of a film: two straight tubes with a bend and an offset between them. For tests. */
import type { Measured, Pixel, Trace, TracedSegment, TraceStation } from '../model/trace.ts';
import { type LineFrame, lineFrame, pointAt } from '../trace/frame.ts';

export interface DrawnBone {
  readonly mmPerPixel: number;
  readonly lengthsMm: readonly [number, number];
  readonly outerMm: readonly [number, number];
  /** Canal over outer width. */
  readonly canalShare: number;
  /** Positive from +column towards +row, as a trace's. */
  readonly angulationDeg: number;
  /** Across the proximal axis (its +90 degree side) at the fracture. */
  readonly offsetMm: number;
  /** Distance along the proximal axis from its end to the distal fragment's; below 0 they override. */
  readonly gapMm: number;
  /** Sd of every diameter. */
  readonly sdMm: number;
  /** Direction of the proximal axis, degrees from +column towards +row; 90 runs down the film. */
  readonly directionDeg: number;
  readonly from: Pixel;
}

export const DRAWN: DrawnBone = {
  mmPerPixel: 0.05,
  lengthsMm: [20, 22],
  outerMm: [3, 3],
  canalShare: 0.6,
  angulationDeg: 0,
  offsetMm: 0,
  gapMm: 0,
  sdMm: 0.02,
  directionDeg: 90,
  from: [300, 40],
};

const STEP_MM = 0.5;

export function drawnTrace(bone: DrawnBone): Trace {
  const { mmPerPixel: mm, angulationDeg, offsetMm, gapMm } = bone;
  const proximal = ray(bone.from, bone.directionDeg, bone.lengthsMm[0] / mm);
  const tan = Math.tan((angulationDeg * Math.PI) / 180);
  const start = pointAt(proximal, (bone.lengthsMm[0] + gapMm) / mm, (offsetMm + gapMm * tan) / mm);
  const distal = ray(start, bone.directionDeg + angulationDeg, bone.lengthsMm[1] / mm);
  const sure = (value: number, sd: number): Measured => ({ value, sd });
  return {
    mmPerPixel: sure(mm, 0),
    ball: null,
    ballHeightErrorPercent: null,
    segments: [segment('proximal', proximal, bone, 0), segment('distal', distal, bone, 1)],
    angulationDeg: sure(angulationDeg, 0.3),
    translationMm: sure(offsetMm, 0.05),
  };
}

function ray(from: Pixel, deg: number, lengthPx: number): LineFrame {
  const a = (deg * Math.PI) / 180;
  return lineFrame(from, [from[0] + lengthPx * Math.cos(a), from[1] + lengthPx * Math.sin(a)]);
}

function segment(name: string, frame: LineFrame, bone: DrawnBone, k: 0 | 1): TracedSegment {
  const { mmPerPixel: mm, sdMm: sd, canalShare } = bone;
  const count = Math.round(bone.lengthsMm[k] / STEP_MM);
  const outer = bone.outerMm[k];
  const stations = Array.from({ length: count + 1 }, (_, i): TraceStation => {
    const s = (i / count) * frame.lengthPx;
    const pair = (widthMm: number) =>
      [pointAt(frame, s, -widthMm / 2 / mm), pointAt(frame, s, widthMm / 2 / mm)] as const;
    return {
      sMm: s * mm,
      centre: pointAt(frame, s, 0),
      outerMm: { value: outer, sd },
      canalMm: { value: canalShare * outer, sd },
      walls: { outer: pair(outer), canal: pair(canalShare * outer) },
    };
  });
  return { name, axis: { from: frame.from, to: frame.to }, stations, notes: [] };
}

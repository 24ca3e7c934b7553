/** A fragment's straight axis: the least-squares line through the midpoints of its outer silhouette. */
import type { SegmentClicks } from '../model/trace.ts';
import { coordinatesOf, type LineFrame, lineFrame, pointAt } from './frame.ts';
import { type BoneModel, globalsOf, modelOf, PARTS, type Part, partAt } from './layout.ts';

/** Points that the line is laid through. */
const POINTS = 60;

/** The line through the midpoints over the clicked length; its ends are where the clicks fall on it. */
export function axisOf(frame: LineFrame, model: BoneModel, clicks: SegmentClicks): LineFrame {
  const mean = frame.lengthPx / 2;
  let sum = 0;
  let moment = 0;
  let square = 0;
  for (let i = 0; i < POINTS; i++) {
    const s = ((i + 0.5) / POINTS) * frame.lengthPx;
    const x = partAt(model, 'co', s);
    sum += x;
    moment += (s - mean) * x;
    square += (s - mean) ** 2;
  }
  const slope = moment / square;
  const offset = sum / POINTS - slope * mean;
  const straight = lineFrame(
    pointAt(frame, 0, offset),
    pointAt(frame, frame.lengthPx, offset + slope * frame.lengthPx),
  );
  return lineFrame(
    pointAt(straight, coordinatesOf(straight, clicks.from)[0], 0),
    pointAt(straight, coordinatesOf(straight, clicks.to)[0], 0),
  );
}

const CENTRES = new Set<Part>(['co', 'ci', 'c2']);

/** The same bone described from another line. */
export function reframed(old: LineFrame, model: BoneModel, next: LineFrame): BoneModel {
  const grid = { ...model.grid, spacing: next.lengthPx / (model.grid.count - 3) };
  const functions: Partial<Record<Part, (s: number) => number>> = {};
  for (const part of PARTS.slice(0, model.parts)) {
    functions[part] = (s) => {
      const [os, shift] = coordinatesOf(old, pointAt(next, s, 0));
      const value = partAt(model, part, Math.min(old.lengthPx, Math.max(0, os)));
      return CENTRES.has(part) ? value - shift : value;
    };
  }
  return modelOf(grid, functions, globalsOf(model), model.unitsPerLog);
}

/** Weights of the axis's level (at the middle) and tilt on the midpoint at each of `count` places. */
export function axisWeights(lengthPx: number): readonly { s: number; level: number; tilt: number }[] {
  const at = Array.from({ length: POINTS }, (_, i) => ((i + 0.5) / POINTS) * lengthPx);
  const square = at.reduce((sum, s) => sum + (s - lengthPx / 2) ** 2, 0);
  return at.map((s) => ({ s, level: 1 / POINTS, tilt: (s - lengthPx / 2) / square }));
}

/** Metal near a fragment: what attenuates far more than bone, with a rim of what the blur carries over. */
import type { Attenuation } from './attenuation.ts';
import { coordinatesOf, type LineFrame, pointAt } from './frame.ts';
import { type BoneModel, partAt } from './layout.ts';

/** 1 where metal or its rim lies, for every pixel of the film. */
export type MetalMask = Uint8Array;

/** Metal is what attenuates this many times more than bone. */
export const METAL_HEIGHTS = 2.2;
const RIM_PX = 4;
/** How far beside the line metal is looked for, in widths. */
const LOOK_WIDTHS = 1.6;

export function metalMask(
  film: Attenuation,
  frame: LineFrame,
  width: number,
  threshold: (s: number) => number,
): MetalMask {
  const mask = new Uint8Array(film.values.length);
  const half = LOOK_WIDTHS * width;
  const corners = [0, frame.lengthPx].flatMap((s) => [-half, half].map((x) => pointAt(frame, s, x)));
  const [c0, c1] = span(
    corners.map((p) => p[0]),
    film.cols,
  );
  const [r0, r1] = span(
    corners.map((p) => p[1]),
    film.rows,
  );
  for (let row = r0; row <= r1; row++) {
    for (let col = c0; col <= c1; col++) {
      const [s, x] = coordinatesOf(frame, [col, row]);
      if (Math.abs(x) <= half && film.values[row * film.cols + col]! >= threshold(s)) addRim(mask, film, col, row);
    }
  }
  return mask;
}

function addRim(mask: MetalMask, { rows, cols }: Attenuation, col: number, row: number): void {
  for (let r = Math.max(0, row - RIM_PX); r <= Math.min(rows - 1, row + RIM_PX); r++) {
    for (let c = Math.max(0, col - RIM_PX); c <= Math.min(cols - 1, col + RIM_PX); c++) {
      if ((r - row) ** 2 + (c - col) ** 2 <= RIM_PX ** 2) mask[r * cols + c] = 1;
    }
  }
}

function span(values: readonly number[], size: number): [number, number] {
  const rim = RIM_PX + 2;
  return [Math.max(0, Math.floor(Math.min(...values)) - rim), Math.min(size - 1, Math.ceil(Math.max(...values)) + rim)];
}

/** Beside the bone metal may come nearer than along it, as a share of the clearance. */
const SIDEWAYS = 0.75;

/** Metal over the bone, or beside it within `clear` pixels of the station. */
export function metalNear(
  film: Attenuation,
  frame: LineFrame,
  model: BoneModel,
  metal: MetalMask,
  s: number,
  clear: number,
): boolean {
  // the mask holds its rim already
  const reach = Math.max(1, clear - RIM_PX);
  for (let ds = -reach; ds <= reach; ds += 1) {
    const at = Math.min(frame.lengthPx, Math.max(0, s + ds));
    const co = partAt(model, 'co', at);
    const half = partAt(model, 'ao', at) + Math.max(0, SIDEWAYS * clear - RIM_PX);
    for (let x = -half; x <= half; x += 1) {
      const p = pointAt(frame, s + ds, co + x);
      const c = Math.round(p[0]);
      const r = Math.round(p[1]);
      if (c >= 0 && r >= 0 && c < film.cols && r < film.rows && metal[r * film.cols + c]) return true;
    }
  }
  return false;
}

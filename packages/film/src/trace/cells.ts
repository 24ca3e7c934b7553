/**
 * The film about one fragment as rows of cells: pixels averaged along the bone (where little changes) but not across
 * (where the edges are). Nothing is interpolated, so that the noise of a cell is what the noise of its pixels makes it.
 */
import type { Attenuation } from './attenuation.ts';
import { coordinatesOf, type LineFrame, pointAt } from './frame.ts';

/** One row of cells at s; x is each cell's mean distance from the frame's line, n its number of pixels. */
export interface CellRow {
  readonly s: number;
  readonly x: Float64Array;
  readonly value: Float64Array;
  readonly n: Float64Array;
}

/** Where rows may look: the middle of the bone and the reach on either side, by s. */
export interface Band {
  readonly from: number;
  readonly to: number;
  readonly rowHeight: number;
  centre(s: number): number;
  /** On the side of falling x (-1) or rising x (1). */
  reach(s: number, side: 1 | -1): number;
}

/** Cells of all pixels in the band that `usable` does not refuse (metal, another fragment). */
export function cellsOf(
  film: Attenuation,
  frame: LineFrame,
  band: Band,
  usable: (index: number) => boolean,
): readonly CellRow[] {
  const count = Math.max(1, Math.round((band.to - band.from) / band.rowHeight));
  const height = (band.to - band.from) / count;
  const middle = Array.from({ length: count }, (_, k) => band.from + (k + 0.5) * height);
  const half = Math.ceil(Math.max(...middle.flatMap((s) => [band.reach(s, -1), band.reach(s, 1)]))) + 1;
  const width = 2 * half + 1;
  const sums = Array.from({ length: count }, () => new Float64Array(width * 4));
  const corners = [band.from, band.to].flatMap((s) =>
    [-1, 1].map((side) => pointAt(frame, s, band.centre(s) + side * (half + bow(band)))),
  );
  const c0 = Math.max(0, Math.floor(Math.min(...corners.map((p) => p[0]))));
  const c1 = Math.min(film.cols - 1, Math.ceil(Math.max(...corners.map((p) => p[0]))));
  const r0 = Math.max(0, Math.floor(Math.min(...corners.map((p) => p[1]))));
  const r1 = Math.min(film.rows - 1, Math.ceil(Math.max(...corners.map((p) => p[1]))));
  for (let row = r0; row <= r1; row++) {
    for (let col = c0; col <= c1; col++) {
      const [s, x] = coordinatesOf(frame, [col, row]);
      const k = Math.floor((s - band.from) / height);
      if (k < 0 || k >= count) continue;
      const off = x - band.centre(s);
      if (Math.abs(off) > band.reach(s, off < 0 ? -1 : 1)) continue;
      const index = row * film.cols + col;
      if (!usable(index)) continue;
      const cell = (Math.round(off) + half) * 4;
      const sum = sums[k]!;
      sum[cell]! += 1;
      sum[cell + 1]! += off;
      sum[cell + 2]! += film.values[index]!;
      sum[cell + 3]! += s;
    }
  }
  return sums.map((sum, k) => rowOf(sum, width, middle[k]!, band));
}

/** How far the band's middle strays from the straight line between its ends. */
function bow(band: Band): number {
  const a = band.centre(band.from);
  const b = band.centre(band.to);
  let most = 0;
  for (let i = 1; i < 16; i++) {
    const t = i / 16;
    most = Math.max(most, Math.abs(band.centre(band.from + t * (band.to - band.from)) - (a + t * (b - a))));
  }
  return most;
}

function rowOf(sum: Float64Array, width: number, s: number, band: Band): CellRow {
  const x: number[] = [];
  const value: number[] = [];
  const n: number[] = [];
  const centre = band.centre(s);
  for (let i = 0; i < width; i++) {
    const count = sum[4 * i]!;
    if (count < 1) continue;
    x.push(centre + sum[4 * i + 1]! / count);
    value.push(sum[4 * i + 2]! / count);
    n.push(count);
  }
  return { s, x: Float64Array.from(x), value: Float64Array.from(value), n: Float64Array.from(n) };
}

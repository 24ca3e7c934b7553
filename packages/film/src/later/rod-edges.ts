/** Both edges of a bright rod row by row, and a robust straight line through the middles between them. */
import type { Attenuation } from '../trace/attenuation.ts';
import type { LineFrame } from '../trace/frame.ts';
import { meanAcross, metalAbout, quantile, type Signal } from './metal-signal.ts';

export interface RodEdges {
  /** Across at s = 0 and change along. */
  readonly line: { readonly offset: number; readonly slope: number };
  readonly acrossSdPx: number;
  readonly slopeSd: number;
  readonly widthPx: number | null;
  readonly widthSdPx: number | null;
}

interface Row {
  readonly s: number;
  readonly middle: number;
  readonly width: number;
  /** Share of the beam beside the rod that is left in its middle; 0 where values are not the beam's. */
  readonly left: number;
}

/** Rows in which both edges must be seen. */
const LEAST_SHARE = 0.35;
/** Half-widths, in rod widths: the plateau; where the surround begins and ends. */
const PLATEAU = 0.2;
const SURROUND = [0.85, 1.5] as const;
/** Widths that pass for the rod, of the expected one. */
const WIDTHS = [0.5, 1.6] as const;
const STEP_PX = 0.25;
/** Neighbouring rows share blur: one in so many counts. */
const TOGETHER = 3;
/** What film, bone and canal beside it do to any edge: no line is surer than this, in pixels and in rod widths. */
const FLOOR_PX = 0.05;
const FLOOR_WIDTHS = 0.006;
/** Tukey's bisquare, in sds. */
const TUKEY = 4.685;
/** How far up from surround to plateau an edge is read: low where values rise with the path, as steel saturates them. */
const LEVEL = { beam: 1 / 2, other: 1 / 4 };
const CHORD_SD_WIDTHS = { beam: 0.03, other: 0.07 };
const WIDTH_FLOOR_PX = 0.15;
/** Thinner than this, blur widens what is seen by more than sizes differ. */
const THINNEST_PX = 7;

export function rodEdges(film: Attenuation, frame: LineFrame, widthPx: number): RodEdges | { readonly why: string } {
  const signal = metalAbout(film, frame);
  const count = Math.floor(frame.lengthPx) + 1;
  const rows = Array.from({ length: count }, (_, s) => rowAt(signal, s, widthPx, film.isLogOfBeam)).filter(
    (r) => r !== null,
  );
  const seen = rows.filter((r) => r.width > WIDTHS[0] * widthPx && r.width < WIDTHS[1] * widthPx);
  if (seen.length < LEAST_SHARE * count) return { why: 'its edges are covered along most of its length' };
  const { line, kept, sd } = robustLine(seen);
  const independent = Math.max(2, kept.length / TOGETHER);
  const length =
    quantile(
      kept.map((r) => r.s),
      1,
    ) -
    quantile(
      kept.map((r) => r.s),
      0,
    );
  const across = Math.hypot(sd / Math.sqrt(independent), FLOOR_PX, FLOOR_WIDTHS * widthPx);
  const width = quantile(
    kept.map((r) => r.width),
    1 / 2,
  );
  const whole = width / Math.sqrt(1 - chordOf(kept, film.isLogOfBeam) ** 2);
  const doubt = film.isLogOfBeam ? CHORD_SD_WIDTHS.beam : CHORD_SD_WIDTHS.other;
  return {
    line,
    acrossSdPx: across,
    slopeSd: (across * Math.sqrt(12)) / length,
    widthPx: widthPx < THINNEST_PX ? null : whole,
    widthSdPx: widthPx < THINNEST_PX ? null : Math.hypot(doubt * whole, WIDTH_FLOOR_PX),
  };
}

/** Where the signal falls to its level between plateau and surround, on each side. */
function rowAt(signal: Signal, s: number, widthPx: number, isBeam: boolean): Row | null {
  const plateau = meanAcross(signal, s, -PLATEAU * widthPx, PLATEAU * widthPx);
  const edge = (side: 1 | -1) => {
    const [near, far] = SURROUND.map((k) => side * k * widthPx + side) as [number, number];
    const beside = meanAcross(signal, s, Math.min(near, far), Math.max(near, far));
    const level = beside + (isBeam ? LEVEL.beam : LEVEL.other) * (plateau - beside);
    if (!(plateau > beside)) return null;
    let before = plateau;
    for (let x = 0; x <= SURROUND[1] * widthPx + 1; x += STEP_PX) {
      const here = signal(s, side * x);
      if (here < level) return { x: side * (x - STEP_PX * ((level - here) / (before - here))), beside };
      before = here;
    }
    return null;
  };
  const a = edge(-1);
  const b = edge(1);
  if (!a || !b) return null;
  const left = isBeam ? (2 * (1 - plateau)) / (2 - a.beside - b.beside) : 0;
  return { s, middle: (a.x + b.x) / 2, width: b.x - a.x, left };
}

/**
 * Chord at the edge's level over the diameter. In the beam, with a share T left in the middle of a round rod, half-way is
 * where ln((1 + T) / 2) of the ln T in the middle is left.
 */
function chordOf(rows: readonly Row[], isBeam: boolean): number {
  if (!isBeam) return LEVEL.other;
  const left = Math.min(
    0.9,
    Math.max(
      1e-4,
      quantile(
        rows.map((r) => r.left),
        1 / 2,
      ),
    ),
  );
  return Math.log((1 + left) / 2) / Math.log(left);
}

function robustLine(rows: readonly Row[]): { line: RodEdges['line']; kept: readonly Row[]; sd: number } {
  let weights = rows.map(() => 1);
  const middle = quantile(
    rows.map((r) => r.middle),
    1 / 2,
  );
  let line = { offset: middle, slope: 0 };
  let sd = 1;
  for (let pass = 0; pass < 8; pass++) {
    const off = rows.map((r) => Math.abs(r.middle - line.offset - line.slope * r.s));
    sd = Math.max(FLOOR_PX, 1.4826 * quantile(off, 1 / 2));
    weights = off.map((d) => (d < TUKEY * sd ? (1 - (d / (TUKEY * sd)) ** 2) ** 2 : 0));
    line = weightedLine(rows, weights);
  }
  return { line, kept: rows.filter((_, i) => weights[i]! > 0), sd };
}

function weightedLine(rows: readonly Row[], weights: readonly number[]): RodEdges['line'] {
  const sum = (f: (r: Row) => number) => rows.reduce((t, r, i) => t + weights[i]! * f(r), 0);
  const w = sum(() => 1);
  const s0 = sum((r) => r.s) / w;
  const x0 = sum((r) => r.middle) / w;
  const slope = sum((r) => (r.s - s0) * (r.middle - x0)) / sum((r) => (r.s - s0) ** 2);
  return { offset: x0 - slope * s0, slope };
}

/**
 * A radiograph by ray sums from a point source: beam through solids, blur of focal spot and detector (core and tail),
 * scatter, quantum noise, and the film's own values. Pure: the same scene gives the same film.
 */
import { value } from '@bonewright/evidence';
import type { GreyImage } from '../model/film.ts';
import { seededRandom } from './random.ts';
import type { Ray, Solid } from './solids.ts';
import type { Vector } from './vector.ts';

/** Source, detector and where the central beam falls. */
export interface Camera {
  readonly cols: number;
  readonly rows: number;
  readonly pitchMm: number;
  readonly sourceToDetectorMm: number;
}

export interface FilmKind {
  /** Sd of the core of the blur, pixels. */
  readonly blurPx: number;
  readonly tailShare: number;
  /** Spread of attenuation over the beam's energies, as a share: 0 for one energy. */
  readonly hardening: number;
  /** Scatter as a share of the open beam. */
  readonly scatter: number;
  /** Quanta in a pixel of the open beam. */
  readonly quanta: number;
  /** Share of a pixel's noise that its neighbours take part in. */
  readonly noiseSpread: number;
  readonly bitsStored: number;
  readonly photometric: 'MONOCHROME1' | 'MONOCHROME2';
  readonly relationship: 'LIN' | 'LOG';
  /** -1: higher value, less beam. */
  readonly sign: 1 | -1;
}

export interface Scene {
  readonly camera: Camera;
  readonly solids: readonly Solid[];
  readonly film: FilmKind;
  /** Open rectangle of the collimator [col0, row0, col1, row1]; absent: all open. */
  readonly open?: readonly [number, number, number, number];
  readonly seed: number;
}

/** Subsamples of a pixel along each side. */
const SUB = 2;
/** Natural logarithms of the beam that the values of a film span. */
const LOGS_IN_RANGE = 8;
/** Attenuation of the collimator's shutters. */
const SHUTTER = 3.2;

export function rayTo(camera: Camera, col: number, row: number): Ray {
  const source: Vector = [
    ((camera.cols - 1) / 2) * camera.pitchMm,
    ((camera.rows - 1) / 2) * camera.pitchMm,
    camera.sourceToDetectorMm,
  ];
  const at: Vector = [col * camera.pitchMm, row * camera.pitchMm, 0];
  return { origin: source, direction: [at[0] - source[0], at[1] - source[1], at[2] - source[2]] };
}

/** Where a point of space falls on the detector, pixels. */
export function shadowOf(camera: Camera, p: Vector): readonly [number, number] {
  const source = rayTo(camera, 0, 0).origin;
  const t = source[2] / (source[2] - p[2]);
  return [(source[0] + t * (p[0] - source[0])) / camera.pitchMm, (source[1] + t * (p[1] - source[1])) / camera.pitchMm];
}

export function project(scene: Scene): GreyImage {
  const { camera, film } = scene;
  const beam = openBeam(scene);
  blurBeam(beam, camera, film);
  addNoise(beam, camera, film, scene.seed);
  const top = 2 ** film.bitsStored - 1;
  const pixels = new Uint16Array(beam.length);
  const offset = 0.05 * top;
  const gain = top / (LOGS_IN_RANGE + 1);
  for (let i = 0; i < beam.length; i++) {
    const b = Math.max(beam[i]!, 1e-5);
    const v =
      film.relationship === 'LIN'
        ? film.sign === 1
          ? 0.92 * top * b
          : top * (1 - 0.92 * b)
        : film.sign === -1
          ? offset - gain * Math.log(b)
          : top - offset + gain * Math.log(b);
    pixels[i] = Math.max(0, Math.min(top, Math.round(v)));
  }
  return {
    rows: camera.rows,
    cols: camera.cols,
    pixels,
    photometric: film.photometric,
    bitsStored: film.bitsStored,
    grey: {
      slope: 1,
      intercept: 0,
      windows: [],
      voiFunction: 'LINEAR',
      intensitySign: film.sign,
      intensityRelationship: film.relationship,
    },
  };
}

/** Share of the beam that each pixel gets, before blur. */
function openBeam(scene: Scene): Float32Array {
  const { camera } = scene;
  const width = camera.cols * SUB;
  const path = new Float32Array(width * camera.rows * SUB);
  for (const solid of scene.solids) addSolid(path, solid, camera);
  const beam = new Float32Array(camera.cols * camera.rows);
  const { hardening: h } = scene.film;
  // two energies, half the beam each
  const left = (p: number) => (h === 0 ? Math.exp(-p) : (Math.exp(-p * (1 + h)) + Math.exp(-p * (1 - h))) / 2);
  for (let row = 0; row < camera.rows; row++) {
    for (let col = 0; col < camera.cols; col++) {
      let sum = 0;
      for (let i = 0; i < SUB; i++) {
        const at = (row * SUB + i) * width + col * SUB;
        for (let j = 0; j < SUB; j++) sum += path[at + j] === 0 ? 1 : left(path[at + j]!);
      }
      beam[row * camera.cols + col] = sum / (SUB * SUB);
    }
  }
  if (scene.open) shut(beam, camera, scene.open);
  return beam;
}

function addSolid(path: Float32Array, solid: Solid, camera: Camera): void {
  const width = camera.cols * SUB;
  const spans = rowSpans(solid, camera);
  const { origin } = rayTo(camera, 0, 0);
  const direction: [number, number, number] = [0, 0, -origin[2]];
  const ray = { origin, direction };
  const aim = (col: number, row: number): Ray => {
    direction[0] = col * camera.pitchMm - origin[0];
    direction[1] = row * camera.pitchMm - origin[1];
    return ray;
  };
  for (let r = 0; r < spans.length; r++) {
    const span = spans[r];
    if (!span) continue;
    if (solid.isSmooth) {
      // one ray for each pixel, shared by its subsamples
      if (r % SUB !== 0) continue;
      for (let c = span[0] - (span[0] % SUB); c <= span[1]; c += SUB) {
        const p = solid.through(aim(c / SUB, r / SUB));
        if (p === 0) continue;
        for (let k = 0; k < SUB * SUB; k++) path[(r + Math.floor(k / SUB)) * width + c + (k % SUB)]! += p;
      }
      continue;
    }
    for (let c = span[0]; c <= span[1]; c++) {
      const p = solid.through(aim((c + 0.5) / SUB - 0.5, (r + 0.5) / SUB - 0.5));
      if (p !== 0) path[r * width + c]! += p;
    }
  }
}

/** For each row of subsamples the columns that the hull's discs (and what lies between them) may cover. */
function rowSpans(solid: Solid, camera: Camera): readonly ([number, number] | undefined)[] {
  const discs = solid.hull.map(({ at, radius }) => {
    const [c, r] = shadowOf(camera, at);
    const grown = (radius * camera.sourceToDetectorMm) / (camera.sourceToDetectorMm - at[2]) / camera.pitchMm + 1;
    return { c, r, grown };
  });
  const spans = new Array<[number, number] | undefined>(camera.rows * SUB);
  const cover = (row: number, low: number, high: number) => {
    if (row < 0 || row >= spans.length) return;
    const a = Math.max(0, Math.floor(low * SUB));
    const b = Math.min(camera.cols * SUB - 1, Math.ceil((high + 1) * SUB));
    if (b < a) return;
    const s = spans[row];
    spans[row] = s ? [Math.min(s[0], a), Math.max(s[1], b)] : [a, b];
  };
  const pairs =
    discs.length === 8
      ? discs.flatMap((p, i) => discs.slice(i).map((q) => [p, q] as const))
      : discs.map((p, i) => [p, discs[i + 1] ?? p] as const);
  for (const [p, q] of pairs) {
    const grown = Math.max(p.grown, q.grown);
    const from = Math.floor((Math.min(p.r, q.r) - grown) * SUB);
    const to = Math.ceil((Math.max(p.r, q.r) + grown + 1) * SUB);
    for (let row = Math.max(0, from); row <= Math.min(spans.length - 1, to); row++) {
      const at = (y: number) => (q.r === p.r ? 0.5 : Math.min(1, Math.max(0, (y - p.r) / (q.r - p.r))));
      const y = row / SUB;
      const cs = [p.c + at(y - grown) * (q.c - p.c), p.c + at(y + grown) * (q.c - p.c)];
      if (q.r === p.r) cs.push(p.c, q.c);
      cover(row, Math.min(...cs) - grown, Math.max(...cs) + grown);
    }
  }
  return spans;
}

/** Closes the collimator, with a soft edge. */
function shut(beam: Float32Array, camera: Camera, open: readonly [number, number, number, number]): void {
  const softPx = 2.5;
  const edge = (d: number) => 1 / (1 + Math.exp(-d / softPx));
  for (let row = 0; row < camera.rows; row++) {
    const v = edge(row - open[1]) * edge(open[3] - row);
    for (let col = 0; col < camera.cols; col++) {
      const u = v * edge(col - open[0]) * edge(open[2] - col);
      if (u < 0.9999) beam[row * camera.cols + col]! *= u + (1 - u) * Math.exp(-SHUTTER);
    }
  }
}

function blurBeam(beam: Float32Array, camera: Camera, film: FilmKind): void {
  const wide = Float32Array.from(beam);
  gaussian(beam, camera, film.blurPx);
  if (film.tailShare > 0) gaussian(wide, camera, value('imaging.blur.tail-ratio') * film.blurPx);
  for (let i = 0; i < beam.length; i++) {
    const primary = beam[i]! + film.tailShare * (wide[i]! - beam[i]!);
    beam[i] = (1 - film.scatter) * primary + film.scatter;
  }
}

/** Separable Gaussian in place; the edge's value runs on outside. */
function gaussian(v: Float32Array, { cols, rows }: Camera, sigma: number): void {
  const half = Math.ceil(3.5 * sigma);
  const kernel = Float64Array.from({ length: half + 1 }, (_, i) => Math.exp(-(i * i) / (2 * sigma * sigma)));
  const norm = kernel.reduce((s, x) => s + 2 * x, -kernel[0]!);
  for (let i = 0; i <= half; i++) kernel[i]! /= norm;
  const line = new Float32Array(cols + 2 * half);
  for (let r = 0; r < rows; r++) {
    const at = r * cols;
    line.fill(v[at]!, 0, half);
    line.set(v.subarray(at, at + cols), half);
    line.fill(v[at + cols - 1]!, half + cols);
    for (let c = 0; c < cols; c++) {
      let sum = kernel[0]! * line[c + half]!;
      for (let j = 1; j <= half; j++) sum += kernel[j]! * (line[c + half - j]! + line[c + half + j]!);
      v[at + c] = sum;
    }
  }
  // down the columns, a whole row at a time
  const source = Float32Array.from(v);
  for (let r = 0; r < rows; r++) {
    const out = v.subarray(r * cols, (r + 1) * cols);
    for (let c = 0; c < cols; c++) out[c] = kernel[0]! * source[r * cols + c]!;
    for (let j = 1; j <= half; j++) {
      const up = Math.max(0, r - j) * cols;
      const down = Math.min(rows - 1, r + j) * cols;
      const k = kernel[j]!;
      for (let c = 0; c < cols; c++) out[c]! += k * (source[up + c]! + source[down + c]!);
    }
  }
}

/** Normal draws to pick from: a film needs a million, and drawing each costs more than its shadows. */
const DRAWS = 1 << 16;

/** Quantum noise, slightly shared between neighbours as detectors do. */
function addNoise(beam: Float32Array, { cols, rows }: Camera, film: FilmKind, seed: number): void {
  const random = seededRandom(seed);
  const draws = Float32Array.from({ length: DRAWS }, () => random.normal());
  const noise = new Float32Array(beam.length);
  for (let i = 0; i < noise.length; i++) noise[i] = draws[(random.uniform() * DRAWS) | 0]!;
  const k = film.noiseSpread;
  const norm = 1 / (1 + 2 * k * k);
  for (let r = 0; r < rows; r++) {
    const up = Math.max(0, r - 1) * cols;
    const here = r * cols;
    const down = Math.min(rows - 1, r + 1) * cols;
    for (let c = 0; c < cols; c++) {
      const l = c > 0 ? c - 1 : 0;
      const q = c < cols - 1 ? c + 1 : c;
      const middle = noise[here + c]! + k * (noise[up + c]! + noise[down + c]!);
      const left = noise[here + l]! + k * (noise[up + l]! + noise[down + l]!);
      const right = noise[here + q]! + k * (noise[up + q]! + noise[down + q]!);
      const b = beam[here + c]!;
      beam[here + c] = b + (middle + k * (left + right)) * norm * Math.sqrt(Math.max(0, b) / film.quanta);
    }
  }
}

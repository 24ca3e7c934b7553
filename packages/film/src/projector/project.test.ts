import { expect, test } from 'vitest';
import { attenuation } from '../trace/attenuation.ts';
import { type Camera, type FilmKind, project, rayTo, shadowOf } from './project.ts';
import { ball, rod } from './solids.ts';
import { tube } from './tube.ts';
import { frameAlong } from './vector.ts';

const PLAIN: FilmKind = {
  blurPx: 0.5,
  tailShare: 0,
  hardening: 0,
  scatter: 0,
  quanta: 1e12,
  noiseSpread: 0,
  bitsStored: 16,
  photometric: 'MONOCHROME2',
  relationship: 'LOG',
  sign: -1,
};

const camera = (sourceToDetectorMm: number, pitchMm = 0.05): Camera => ({
  cols: 240,
  rows: 120,
  pitchMm,
  sourceToDetectorMm,
});

/** A straight round tube along the rows' direction, at a height over the detector. */
function straightTube(c: Camera, outerMm: number, canalMm: number, heightMm: number) {
  const middle = ((c.cols - 1) / 2) * c.pitchMm;
  return tube({
    frame: frameAlong([middle, 0, heightMm], [0, 1, 0], [1, 0, 0]),
    turn: 0,
    fromZ: -20,
    toZ: 40,
    outer: () => ({ cx: 0, cy: 0, a: outerMm / 2, b: outerMm / 2 }),
    canal: () => ({ cx: 0, cy: 0, a: canalMm / 2, b: canalMm / 2 }),
    attenuation: 0.1,
  });
}

test.each([
  [1000, 10, 3.03],
  [1000, 20, 3.06],
  [1000, 50, 3.16],
  [700, 20, 3.09],
  [700, 50, 3.23],
])('magnification, source %d mm, height %d mm: a 3.00 mm rod reads %d mm at the detector', (sid, height, reads) => {
  const c = camera(sid, 0.01);
  const middle = ((c.cols - 1) / 2) * c.pitchMm;
  const solid = rod([middle, -30, height], [middle, 60, height], 3, 1);
  const row = 60;
  let first = 0;
  let last = 0;
  for (let col = -400; col < 640; col += 0.05) {
    if (solid.through(rayTo(c, col, row)) <= 0) continue;
    if (first === 0) first = col;
    last = col;
  }
  // SID/(SID - h) to half of the printed digit, and what the rod's own thickness adds to its tangents
  expect(Math.abs((last - first) * c.pitchMm - reads)).toBeLessThan(0.0055);
});

test('a ball off the central beam throws an ellipse: 100 mm off at 650 of 700 mm stretches it by 1.18 %', () => {
  const c = { cols: 2, rows: 2, pitchMm: 0.1, sourceToDetectorMm: 700 };
  const solid = ball([100, 0.05, 50], 5, 1);
  const [col, row] = shadowOf(c, [100, 0.05, 50]);
  const extent = (dc: number, dr: number) => {
    const edge = (side: number) => {
      let inside = 0;
      let out = 200 * side;
      for (let k = 0; k < 50; k++) {
        const half = (inside + out) / 2;
        if (solid.through(rayTo(c, col + dc * half, row + dr * half)) > 0) inside = half;
        else out = half;
      }
      return inside;
    };
    return edge(1) - edge(-1);
  };
  // closed form of the axes, to half of the last digit
  expect(Math.abs(extent(1, 0) / extent(0, 1) - 1.0118)).toBeLessThan(0.00011);
});

test('a round tube square to the beam: path 2 (sqrt(R2 - x2) - sqrt(r2 - x2)), highest where the canal begins', () => {
  const c = camera(1e6);
  const solid = straightTube(c, 3, 2.2, 20);
  const middle = (c.cols - 1) / 2;
  const path = (x: number) => solid.through(rayTo(c, middle + x / c.pitchMm, 50)) / 0.1;
  // worked figures for R 1.5, r 1.1: centre 0.8, peak 2.04 mm; a source at 1 km leaves 2e-5 of fan
  expect(path(0)).toBeCloseTo(0.8, 3);
  expect(path(1.1)).toBeCloseTo(2.04, 2);
  expect(path(0.5)).toBeCloseTo(2 * (Math.sqrt(1.5 ** 2 - 0.25) - Math.sqrt(1.1 ** 2 - 0.25)), 3);
  expect(path(1.51)).toBe(0);
});

test('every kind of film of one scene reads as the same attenuation', () => {
  const c = camera(1000);
  const solids = [straightTube(c, 3, 2, 20)];
  const kinds = (['LIN', 'LOG'] as const).flatMap((relationship) =>
    ([1, -1] as const).map(
      (sign) => ({ ...PLAIN, relationship, sign, photometric: sign === 1 ? 'MONOCHROME1' : 'MONOCHROME2' }) as const,
    ),
  );
  const contrast = kinds.map((film) => {
    const a = attenuation(project({ camera: c, solids, film, seed: 1 }));
    const at = (col: number) => a.values[60 * c.cols + col]!;
    return (at(119) - at(3)) / (at(90) - at(3));
  });
  // centre over wall: 16-bit steps only
  for (const ratio of contrast) expect(ratio).toBeCloseTo(contrast[0]!, 2);
});

test('the same scene gives the same film, another seed another noise', () => {
  const scene = { camera: camera(1000), solids: [], film: { ...PLAIN, quanta: 500 } };
  const one = project({ ...scene, seed: 3 });
  expect(project({ ...scene, seed: 3 }).pixels).toEqual(one.pixels);
  expect(project({ ...scene, seed: 4 }).pixels).not.toEqual(one.pixels);
});

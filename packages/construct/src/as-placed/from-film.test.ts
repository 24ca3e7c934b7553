import { describe, expect, test } from 'vitest';
import { viewFigures } from '../figure/view-figures.ts';
import type { Construct } from '../model/case-file.ts';
import { straightBone } from '../straight-bone.ts';
import { placedFromFilm, type SeenOnFilm } from './from-film.ts';

const CASE = straightBone({
  lengthMm: 80,
  outerMm: 7,
  canalMm: 4.5,
  gapMm: 1,
  pinMm: 1.4,
  pins: [[12], [32], [48], [68]],
  columnMm: 9,
  clearanceMm: 6,
});
const planned = CASE.construct!;
const turned = (aboutDeg: number): Construct => ({
  ...planned,
  pins: planned.pins.map((pin) => ({ ...pin, aboutDeg })),
});
const withPin = (construct: Construct, change: Partial<Construct['pins'][number]>): Construct => ({
  ...construct,
  pins: construct.pins.map((pin, i) => (i === 1 ? { ...pin, ...change } : pin)),
});

/** What a film of `stands` would show of P2 against `plan`, read off both figures. */
function seenOf(plan: Construct, stands: Construct): SeenOnFilm {
  const [was, is] = [plan, stands].map((c) => viewFigures(CASE, c)[0]!.pins[1]!);
  const lean = ({ line }: NonNullable<typeof was>) => {
    const [tip, end] = [line[0]!, line.at(-1)!];
    return (Math.atan2(tip[0] - end[0], Math.abs(tip[1] - end[1])) * 180) / Math.PI;
  };
  const depth = ({ line, nearWall }: NonNullable<typeof was>) =>
    Math.hypot(line[0]![0] - nearWall[0], line[0]![1] - nearWall[1]);
  return {
    placeMm: is!.nearWall[0] - was!.nearWall[0],
    tiltDeg: lean(is!) - lean(was!),
    depthMm: depth(is!) - depth(was!),
  };
}

describe('a pin read from a film is written down as it stands', () => {
  test.each([
    [0, 0, 0, 2],
    [0, 2.3, 0, 2],
    [0, -1.1, 12, 2],
    [0, 0.8, -9, 1],
    [35, 1.5, 10, 2],
  ] as const)('seen %d degrees aslant, %d mm off, tilted %d, through %d walls', (aboutDeg, off, tiltDeg, cortices) => {
    const plan = turned(aboutDeg);
    const stands = withPin(plan, { sMm: 32 + off, tiltDeg, cortices });
    const placed = placedFromFilm(viewFigures(CASE, plan)[0]!, plan, 2, seenOf(plan, stands));
    expect(placed).toMatchObject({ pin: 2, aboutDeg, cortices });
    // half a millimetre between drawn walls, on a straight bone, moves nothing by more than this
    expect(Math.abs(placed.sMm - (32 + off))).toBeLessThan(0.1);
    expect(Math.abs(placed.tiltDeg - tiltDeg)).toBeLessThan(0.5);
  });
  test('a tip that is not seen stands as planned', () => {
    const placed = placedFromFilm(viewFigures(CASE, planned)[0]!, planned, 1, {
      placeMm: 0,
      tiltDeg: 0,
      depthMm: null,
    });
    expect(placed).toMatchObject({ pin: 1, cortices: 2 });
    expect(placed.sMm).toBeCloseTo(12, 6);
  });
});

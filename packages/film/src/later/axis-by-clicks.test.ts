import { describe, expect, test } from 'vitest';
import type { Pixel } from '../model/trace.ts';
import { axisByClicks } from './axis-by-clicks.ts';

const SCALE = { value: 0.1, sd: 0.0005 };

/** A bone down the film, its distal part turned by so much to the right and shifted by so many pixels. */
function clicked(turnDeg: number, shiftPx: number, aslantDeg = 0) {
  const turned = ([x, y]: Pixel): Pixel => {
    const a = (aslantDeg * Math.PI) / 180;
    return [300 + x * Math.cos(a) - y * Math.sin(a), 400 + x * Math.sin(a) + y * Math.cos(a)];
  };
  const t = Math.tan((turnDeg * Math.PI) / 180);
  const distal = (along: number) => turned([shiftPx + along * t, along]);
  return [
    { name: 'proximal', from: turned([0, -200]), to: turned([0, -20]) },
    { name: 'distal', from: distal(20), to: distal(200) },
  ] as const;
}

describe('bend and shift by four clicks', () => {
  test.each([
    [6, 12, 0, 'medial', 6, 1.2],
    [6, 12, 0, 'lateral', -6, -1.2],
    [-4, 5, 20, 'cranial', -4, 0.5],
    [3, -8, 175, 'caudal', 3, -0.8],
  ] as const)('turned %d deg, shifted %d px, lying %d deg aslant, %s to the right', (turn, px, aslant, to, deg, mm) => {
    const { bendDeg, shiftMm } = axisByClicks(clicked(turn, px, aslant), to, SCALE)!;
    expect(bendDeg.value).toBeCloseTo(deg, 9);
    expect(shiftMm.value).toBeCloseTo(mm, 9);
  });
  test('longer stretches say the bend more surely, and without a scale there is no shift', () => {
    const long = axisByClicks(clicked(3, 0), 'medial', SCALE)!;
    const [proximal, distal] = clicked(3, 0);
    const short = axisByClicks([{ ...proximal, from: [300, 300] }, distal], 'medial', {
      value: null,
      sd: null,
      why: 'no scale',
    })!;
    expect(short.bendDeg.sd!).toBeGreaterThan(long.bendDeg.sd!);
    expect(short.shiftMm).toEqual({ value: null, sd: null, why: 'no scale' });
  });
  test('a fragment clicked on one spot has no axis', () => {
    const [proximal, distal] = clicked(3, 0);
    expect(axisByClicks([{ ...proximal, to: proximal.from }, distal], 'medial', SCALE)).toBeNull();
  });
});

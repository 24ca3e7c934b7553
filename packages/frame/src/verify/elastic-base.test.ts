/**
 * Beam on an elastic base: M. Hetenyi, Beams on Elastic Foundation, 1946. b = (k / 4 E I)^(1/4). Semi-infinite beam: end
 * force y0 = 2 P b / k, slope 2 P b^2 / k; end moment y0 = 2 M b^2 / k, slope 4 M b^3 / k. Infinite beam, force in
 * the middle: y = P b / 2 k, M = P / 4 b. The base is made of springs a distance h apart, so the error falls with the square
 * of b h and is below it: 9e-4 at 0.1 mm.
 */
import { describe, expect, test } from 'vitest';
import { at, E, I, solveOne, wireAlongX } from './wire.ts';

const K = 2000;
const B = (K / (4 * E * I)) ** 0.25;
/** Where the waves of a long beam have died: exp(-b x) = 6e-6. */
const LONG = 40;
const STEP = 0.1;
const near = (found: number, exact: number) => expect(Math.abs(found / exact - 1)).toBeLessThan((B * STEP) ** 2);

/** A wire on springs from x = `from` to `LONG`, `h` apart; the end springs carry half a step. */
function onBase(from: number, h: number, node: number, load: readonly number[]) {
  const count = Math.round((LONG - from) / h);
  const places = Array.from({ length: count + 1 }, (_, i) => from + i * h);
  const springs = Object.fromEntries(
    places.map((_, i) => {
      const share = i === 0 || i === count ? h / 2 : h;
      return [`s${i}`, { from: `n${i}`, to: null, k: [0, K * share, 0, 0, 0, 0] }];
    }),
  );
  const loads = { one: { [`n${Math.round((node - from) / h)}`]: load } };
  const result = solveOne(wireAlongX(places, { springs, supports: { n0: ['x', 'z', 'rx', 'ry'] }, loads }));
  return { ...result, loaded: `n${Math.round((node - from) / h)}` };
}

describe('semi-infinite beam', () => {
  test.each([
    ['end force', [0, 10, 0, 0, 0, 0], (2 * 10 * B) / K, (-2 * 10 * B ** 2) / K],
    ['end moment', [0, 0, 0, 0, 0, 50], (-2 * 50 * B ** 2) / K, (4 * 50 * B ** 3) / K],
  ])('%s: deflection and slope at the end', (_, load, y, slope) => {
    const { displacements } = onBase(0, STEP, 0, load);
    near(at(displacements, 'n0', 1), y);
    near(at(displacements, 'n0', 5), slope);
  });

  test('the error falls with the square of the spacing (order 2 within 0.1)', () => {
    const exact = (2 * 10 * B) / K;
    const errors = [1, 0.5].map((h) => at(onBase(0, h, 0, [0, 10, 0, 0, 0, 0]).displacements, 'n0', 1) / exact - 1);
    expect(Math.abs(Math.log2((errors[0] ?? 0) / (errors[1] ?? 1)) - 2)).toBeLessThan(0.1);
  });
});

test('infinite beam, force in the middle: deflection P b / 2 k and moment P / 4 b', () => {
  const { displacements, members, loaded } = onBase(-LONG, STEP, 0, [0, 10, 0, 0, 0, 0]);
  near(at(displacements, loaded, 1), (10 * B) / (2 * K));
  const before = members[`m${Number(loaded.slice(1)) - 1}`];
  near(Math.abs(before?.to[4] ?? 0), 10 / (4 * B));
});

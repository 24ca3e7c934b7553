import { expect, test } from 'vitest';
import { turnWeights } from './buckling.ts';

/**
 * The slope of a beam bent by its ends' turns a and b from the chord: cubic in the place s = x/L, v' = a (1 - 4s + 3s^2) +
 * b (3s^2 - 2s), of which the even part is the sum's and is eased by shear.
 */
test('work of a pull: the integral of the slope squared over the length', () => {
  const [L, shear] = [7, 1.3];
  const integral = (slope: (s: number) => number) => {
    const n = 2000;
    return (L / n) * Array.from({ length: n }, (_, i) => slope((i + 0.5) / n) ** 2).reduce((a, b) => a + b);
  };
  const cubic = (a: number, b: number) => (s: number) => a * (1 - 4 * s + 3 * s * s) + b * (3 * s * s - 2 * s);
  const expected = [integral(() => 1), integral((s) => cubic(0.5, 0.5)(s) / shear), integral(cubic(-0.5, 0.5))];
  turnWeights(L, shear).forEach((weight, i) => {
    expect(weight / expected[i]!).toBeCloseTo(1, 5);
  });
});

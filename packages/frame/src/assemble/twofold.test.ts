import { describe, expect, test } from 'vitest';
import { add, addExactly, cross, divide, dot, multiplyExactly, type Twofold, twofold } from './twofold.ts';

/** hi + lo as a fraction over 2^200, which holds every number here exactly. */
const exact = ([hi, lo]: Twofold): bigint => scaled(hi) + scaled(lo);
function scaled(value: number): bigint {
  // A number is a whole multiple of 2^-52 times a power of two: shift it up until it is whole.
  let [mantissa, shift] = [value, 200];
  while (!Number.isInteger(mantissa)) {
    mantissa *= 2;
    shift -= 1;
  }
  return BigInt(mantissa) << BigInt(shift);
}

describe('no digit is lost', () => {
  test('sum', () => {
    expect(exact(addExactly(0.1, 1e9))).toBe(scaled(0.1) + scaled(1e9));
  });

  test('product', () => {
    const [hi, lo] = multiplyExactly(0.1, 0.3);
    expect(exact([hi, lo]) << 200n).toBe(scaled(0.1) * scaled(0.3));
  });

  test('a dot product that cancels to its last term', () => {
    const a = [1e16, 1, -1e16].map(twofold);
    const b = [1, 1e-3, 1].map(twofold);
    expect(dot(a, b)).toEqual([1e-3, 0]);
  });

  test('a third, to 32 digits', () => {
    const third = divide(twofold(1), 3);
    expect(third[0] * 3 - 1).toBe(0);
    expect(add(add(third, third), add(third, [-1, 0]))[0]).toBeLessThan(1e-31);
  });

  test('a vector across itself is nothing', () => {
    const v = [divide(twofold(1), 3), divide(twofold(2), 7), twofold(0.1)] as const;
    for (const [hi] of cross(v, v)) expect(Math.abs(hi)).toBeLessThan(1e-32);
  });
});

import { describe, expect, test } from 'vitest';
import { exactStep, type Slope } from './line-search.ts';

function slopeOf(value: (t: number) => number, rate: (t: number) => number): Slope {
  const slope = {
    value: 0,
    rate: 0,
    at(t: number) {
      slope.value = value(t);
      slope.rate = rate(t);
    },
  };
  return slope;
}

describe('step at which the slope is 0', () => {
  test('a straight slope: the whole Newton step, exactly', () => {
    expect(
      exactStep(
        slopeOf(
          (t) => 3 * t - 3,
          () => 3,
        ),
        -3,
      ),
    ).toBe(1);
  });

  test('a stop that shuts on the way: where the two straight parts balance', () => {
    // -1 + t until 0.25, then 100 times as steep: root at 0.25 + 0.75 / 100.
    const value = (t: number) => (t < 0.25 ? t - 1 : -0.75 + 100 * (t - 0.25));
    expect(
      exactStep(
        slopeOf(value, (t) => (t < 0.25 ? 1 : 100)),
        -1,
      ),
    ).toBeCloseTo(0.2575, 12);
  });

  test('beyond the Newton step, where something lets go', () => {
    const value = (t: number) => (t < 0.5 ? t - 1 : -0.5 + 0.01 * (t - 0.5));
    expect(
      exactStep(
        slopeOf(value, (t) => (t < 0.5 ? 1 : 0.01)),
        -1,
      ),
    ).toBeCloseTo(50.5, 9);
  });

  test('a slope that rises without a kink', () => {
    expect(
      exactStep(
        slopeOf((t) => Math.exp(t) - 2, Math.exp),
        -1,
      ),
    ).toBeCloseTo(Math.log(2), 9);
  });

  test('a slope that never rises to 0: no end', () => {
    expect(
      exactStep(
        slopeOf(
          () => -1,
          () => 0,
        ),
        -1,
      ),
    ).toBe(Number.POSITIVE_INFINITY);
  });
});

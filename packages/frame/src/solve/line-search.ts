/** The least of a convex energy along a direction, found as the root of its rising slope. */

/** The slope at the found step, as a share of that at 0. */
const FLAT = 1e-9;
const MOST_DOUBLINGS = 100;
const MOST_TRIES = 200;

export interface Slope {
  /** Sets `value` and `rate` (never below 0) for a step. */
  at(step: number): void;
  value: number;
  rate: number;
}

/**
 * Step t > 0 at which `slope` (rising, below 0 at t = 0, value `start`) is 0; 1 is tried first.
 * Infinity where the energy falls without end.
 */
export function exactStep(slope: Slope, start: number): number {
  const flat = FLAT * Math.abs(start);
  let low = 0;
  let high = 1;
  slope.at(high);
  for (let i = 0; slope.value < -flat; i++) {
    if (i === MOST_DOUBLINGS) return Number.POSITIVE_INFINITY;
    low = high;
    high *= 2;
    slope.at(high);
  }
  // Newton's method within the bracket; halving where it would leave it.
  let t = high;
  for (let i = 0; i < MOST_TRIES && Math.abs(slope.value) > flat; i++) {
    if (slope.value < 0) low = t;
    else high = t;
    const next = t - slope.value / slope.rate;
    t = next > low && next < high ? next : (low + high) / 2;
    if (t <= low || t >= high) return low > 0 ? low : high;
    slope.at(t);
  }
  return t;
}

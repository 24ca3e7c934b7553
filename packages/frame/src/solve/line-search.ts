/** The least of a convex energy along a direction, found as the root of its rising slope. */

/** The slope at the found step, as a share of that at 0. */
const FLAT = 1e-9;
const MOST_DOUBLINGS = 100;
const MOST_HALVINGS = 200;

/**
 * Step t > 0 at which `slope` (rising, below 0 at t = 0, value `start`) is 0; 1 is tried first.
 * Infinity where the energy falls without end.
 */
export function exactStep(slope: (t: number) => number, start: number): number {
  const flat = FLAT * Math.abs(start);
  let [low, lowSlope, high] = [0, start, 1];
  let highSlope = slope(high);
  for (let i = 0; highSlope < -flat; i++) {
    if (i === MOST_DOUBLINGS) return Number.POSITIVE_INFINITY;
    [low, lowSlope, high] = [high, highSlope, 2 * high];
    highSlope = slope(high);
  }
  if (highSlope <= flat) return high;
  return root(slope, low, lowSlope, high, highSlope, flat);
}

/** False position with the stale end's weight halved (Illinois), halving the interval every third time. */
function root(
  slope: (t: number) => number,
  from: number,
  fromSlope: number,
  to: number,
  toSlope: number,
  flat: number,
): number {
  let [low, lowSlope, high, highSlope] = [from, fromSlope, to, toSlope];
  for (let i = 0; i < MOST_HALVINGS && high - low > Number.EPSILON * high; i++) {
    const share = i % 3 === 2 ? 0.5 : lowSlope / (lowSlope - highSlope);
    const t = low + share * (high - low);
    const at = slope(t);
    if (Math.abs(at) <= flat) return t;
    if (at < 0) [low, lowSlope, highSlope] = [t, at, highSlope / 2];
    else [high, highSlope, lowSlope] = [t, at, lowSlope / 2];
  }
  return low > 0 ? low : high;
}

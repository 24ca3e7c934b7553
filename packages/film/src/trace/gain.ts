/**
 * Film values to one natural logarithm of the beam, for films that do not say. Quanta make the variance of a logarithm
 * go as 1 / beam, so ln(variance) rises with the value by 1 / gain: read off the film's own noise, level by level.
 */

/** A film must show at least this ratio of variances over its levels before its noise is believed. */
const LEAST_RISE = 0.35;
const LEVELS = 24;
const LEAST_PAIRS = 400;

/** The gain of values that are proportional to the logarithm of the beam; null where the noise does not show it. */
export function gainFromNoise(values: Float32Array, cols: number): number | null {
  const pairs = sampledPairs(values, cols);
  if (pairs.length < LEVELS * LEAST_PAIRS) return null;
  pairs.sort((a, b) => a[0] - b[0]);
  const size = Math.floor(pairs.length / LEVELS);
  const levels = Array.from({ length: LEVELS }, (_, k) => {
    const part = pairs.slice(k * size, (k + 1) * size);
    const steps = part.map((p) => p[1]).sort((a, b) => a - b);
    return { value: part[size >> 1]![0], step: steps[size >> 1]! };
  }).filter((l) => l.step > 0);
  if (levels.length < LEVELS / 2) return null;
  const points = levels.map((l) => ({ x: l.value, y: 2 * Math.log(l.step) }));
  const slope = robustSlope(points);
  const range = Math.max(...points.map((p) => p.x)) - Math.min(...points.map((p) => p.x));
  return slope * range > LEAST_RISE ? 1 / slope : null;
}

/** Value and roughness of a part of the film's pixels: the lesser second difference of the two directions, so that edges do not count. */
function sampledPairs(values: Float32Array, cols: number): [number, number][] {
  const stride = Math.max(1, Math.floor(values.length / 60_000));
  const out: [number, number][] = [];
  for (let i = cols; i + cols < values.length; i += stride) {
    const here = 2 * values[i]!;
    const across = Math.abs(values[i - 1]! + values[i + 1]! - here);
    const down = Math.abs(values[i - cols]! + values[i + cols]! - here);
    out.push([(values[i - 1]! + values[i + 1]! + values[i - cols]! + values[i + cols]!) / 4, Math.min(across, down)]);
  }
  return out;
}

/** Median of the slopes of all pairs of levels that lie well apart. */
function robustSlope(points: readonly { x: number; y: number }[]): number {
  const range = Math.max(...points.map((p) => p.x)) - Math.min(...points.map((p) => p.x));
  const slopes: number[] = [];
  for (const [i, a] of points.entries()) {
    for (const b of points.slice(i + 1)) {
      if (Math.abs(b.x - a.x) > 0.2 * range) slopes.push((b.y - a.y) / (b.x - a.x));
    }
  }
  slopes.sort((a, b) => a - b);
  return slopes[slopes.length >> 1] ?? 0;
}

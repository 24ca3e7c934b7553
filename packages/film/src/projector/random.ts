/** Seeded random draws: the same seed, the same film, on every machine. */
export interface Random {
  /** Uniform in [0, 1). */
  uniform(): number;
  between(low: number, high: number): number;
  normal(): number;
  chance(p: number): boolean;
}

/** A small counter-based generator (32-bit mixing); good enough for noise and for drawing bones. */
export function seededRandom(seed: number): Random {
  let state = (Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ 0xc2b2ae35) >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, between: (low, high) => low + (high - low) * uniform(), normal, chance: (p) => uniform() < p };
}

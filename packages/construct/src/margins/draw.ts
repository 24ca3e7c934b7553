/**
 * Random numbers that depend on their coordinates only: the n-th sample of the k-th input is the same whatever else is
 * drawn, so that one more input changes no other.
 */

/** A uniform number in (0, 1) for these three whole numbers: two rounds of a 32-bit integer mixer. */
export function uniformAt(seed: number, sample: number, stream: number): number {
  const folded = mixed(mixed(mixed(seed | 0) ^ sample) ^ stream);
  return (folded + 0.5) / TWO_32;
}

const TWO_32 = 2 ** 32;

/** Steele, Lea & Flood's finaliser in its 32-bit form (the constants of MurmurHash3). */
function mixed(value: number): number {
  let h = (value + 0x9e3779b9) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** A standard normal number (Box and Muller). */
export function normalAt(seed: number, sample: number, input: number): number {
  const radius = Math.sqrt(-2 * Math.log(uniformAt(seed, sample, 2 * input)));
  return radius * Math.cos(2 * Math.PI * uniformAt(seed, sample, 2 * input + 1));
}

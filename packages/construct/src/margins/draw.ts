/**
 * Random numbers that depend on their coordinates only: the n-th sample of the k-th input is the same whatever else is
 * drawn, so that one more input changes no other.
 */

/** A uniform number in (0, 1) for these three whole numbers: two rounds of a 32-bit integer mixer. */
export function uniformAt(seed: number, sample: number, stream: number): number {
  const folded = mixed(mixed(mixed(seed | 0) ^ sample) ^ stream);
  return (2 * folded + 1) / (2 * TWO_32);
}

const TWO_32 = 2 ** 32;

/** The 32-bit finaliser of MurmurHash3 (public domain), after a step of the golden ratio. */
function mixed(value: number): number {
  let h = (value + GOLDEN) | 0;
  h = Math.imul(h ^ (h >>> HALF_WORD), FIRST);
  h = Math.imul(h ^ (h >>> SHIFT), SECOND);
  return (h ^ (h >>> HALF_WORD)) >>> 0;
}

const GOLDEN = 0x9e3779b9;
const FIRST = 0x85ebca6b;
const SECOND = 0xc2b2ae35;
const HALF_WORD = 16;
const SHIFT = 13;

/** A standard normal number (Box and Muller). */
export function normalAt(seed: number, sample: number, input: number): number {
  const radius = Math.sqrt(-2 * Math.log(uniformAt(seed, sample, 2 * input)));
  return radius * Math.cos(2 * Math.PI * uniformAt(seed, sample, 2 * input + 1));
}

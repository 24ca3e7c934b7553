/** Damage on purpose, the same for the same seed: some bytes overwritten, sometimes the end cut off. */

/** Bytes overwritten at most. */
export const MOST_BYTES = 12;
const CUT_SHARE = 0.15;

/** A generator of numbers in [0, 1) (mulberry32, T. Ettinger, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A copy of `bytes` with 1 to 12 random bytes; 15 in 100 copies are also cut. DICOM's empty preamble is left alone. */
export function mutated(bytes: Uint8Array, seed: number): Uint8Array {
  const random = seeded(seed);
  const copy = bytes.slice();
  const from = copy[0] === 0 ? 132 : 0;
  const count = 1 + Math.floor(random() * MOST_BYTES);
  for (let i = 0; i < count; i++) copy[from + Math.floor(random() * (copy.length - from))] = Math.floor(random() * 256);
  return random() < CUT_SHARE ? copy.subarray(0, Math.floor(random() * copy.length)) : copy;
}

/** Invented constructs of many sizes for timing and for testing intervals: rabbits and owls that never were. */
import { type Case, readCase } from '@bonewright/construct';

/** Numerical Recipes' linear congruential generator: good enough to spread sizes. */
export function spreader(seed: number): (low: number, high: number) => number {
  let state = seed >>> 0;
  return (low, high) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return low + ((high - low) * state) / 2 ** 32;
  };
}

/** Six pins, a putty column, usual grip; sizes drawn. */
export function inventedCase(between: (low: number, high: number) => number, withIm: boolean): Case {
  const outer = between(3, 8);
  const canal = outer * between(0.5, 0.75);
  const lengthMm = outer * between(9, 14);
  const gapMm = between(0.4, 1.5);
  const half = (lengthMm - gapMm) / 2;
  const spots = [0.2, 0.5, 0.82].map((spot) => half * (spot + between(-0.05, 0.05)));
  const pin = { id: 'pin', diameterMm: outer * between(0.18, 0.27), kind: 'smooth', material: 'steel-cold-worked' };
  return readCase({
    patient: { species: between(0, 1) < 0.5 ? 'rabbit' : 'tawny owl', massG: 12 * outer ** 2.6 },
    bone: {
      name: 'tibia',
      lengthMm,
      stations: [0, 0.25, 0.5, 0.75, 1].map((share) => ({
        sMm: share * lengthMm,
        outerMm: [outer * between(0.95, 1.05), outer * between(0.9, 1)],
        canalMm: [canal * between(0.95, 1), canal * between(0.9, 1)],
        sdMm: between(0.03, 0.12),
      })),
    },
    fracture: { fromMm: half, toMm: half + gapMm, gapMm, obliquityDeg: between(0, 30) },
    drawer: {
      pins: [{ ...pin, count: 6 }],
      imPins: [{ id: 'im', diameterMm: canal * 0.4, material: 'steel-cold-worked', count: 1 }],
      columns: [{ id: 'column', material: 'epoxy-putty', diameterMm: outer * between(1.2, 2) }],
    },
    construct: {
      im: withIm ? { drawerId: 'im', tiedIn: true } : null,
      pins: [...spots, ...spots.map((s) => lengthMm - s)].map((sMm) => ({ drawerId: 'pin', sMm })),
      column: { drawerId: 'column', clearanceMm: outer * between(0.8, 1.6) },
    },
  });
}

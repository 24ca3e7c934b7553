/**
 * Suspect pivots measured again. A pivot is the energy of the motion that moves its unknown by 1 and lets all earlier
 * ones follow; taken as a difference it may be only rounding, but as the sum of the springs' own energies it is exact, and a
 * true mechanism shows as a motion that deforms nothing.
 */
import { ELEMENT_ROWS, MODES, ROW } from '../assemble/deformations.ts';
import type { HeldInterface, Measured, Tangent } from './contact-state.ts';
import type { GapLaws } from './gaps.ts';
import type { Memory } from './memory.ts';
import { type Program, STEP_HEAD } from './program.ts';
import { backSquare } from './square.ts';

/** Energy, as a share of what the motion would cost each unknown alone, below which nothing resists it. */
const NOTHING = 1e-18;

/** Measures the pivot of an interior unknown; those before it have been eliminated. */
export function measureInterior(program: Program, memory: Memory, unknown: number): Measured {
  const motion = new Float64Array(program.unknowns + 1);
  motion[unknown] = 1;
  followInterior(program, memory, motion, unknown);
  return judge(memory, motion, elasticEnergy(program, memory, motion));
}

/** Measures the pivot of a kept interface unknown in a tangent under factorisation, at a state of contacts and sleeves. */
export function measureKept(
  program: Program,
  memory: Memory,
  laws: GapLaws,
  held: HeldInterface,
  tangent: Tangent,
  unknown: number,
  amounts: Float64Array,
): Measured {
  const { n } = tangent;
  const kept = new Float64Array(n);
  kept[unknown] = 1;
  backSquare(tangent.values, n, tangent.inverse, kept, unknown);
  const motion = new Float64Array(program.unknowns + 1);
  for (let i = 0; i < n; i++) motion[program.interior + held.kept[i]!] = kept[i]!;
  followInterior(program, memory, motion, program.interior);
  let energy = elasticEnergy(program, memory, motion);
  laws.tangent(amounts, (k, row, weight, weight2) => {
    let amount = 0;
    for (let i = 0; i < n; i++) {
      amount += weight * held.gapRows[row * n + i]! * kept[i]!;
      if (weight2 !== 0) amount += weight2 * held.gapRows[(row + 1) * n + i]! * kept[i]!;
    }
    energy += k * amount * amount;
  });
  return judge(memory, motion, energy);
}

function judge({ diagonal }: Memory, motion: Float64Array, energy: number): Measured {
  let scale = 0;
  for (let i = 0; i < motion.length; i++) scale += diagonal[i]! * motion[i]! * motion[i]!;
  return { pivot: energy, freeMotion: energy > NOTHING * scale ? null : motion };
}

/** Lets every interior unknown before `below` follow the others; `motion` holds one number an unknown, and a last 0. */
function followInterior(
  program: Program,
  { values, inverse, steps, stepAt }: Memory,
  motion: Float64Array,
  below: number,
): void {
  for (let step = program.stepAt.length - 1; step >= 0; step--) {
    const at = stepAt[step]!;
    const [size, base, width, first] = [steps[at]!, steps[at + 1]!, steps[at + 2]!, steps[at + 3]!];
    for (let k = Math.min(size, below - first) - 1; k >= 0; k--) {
      let sum = 0;
      for (let j = k + 1; j < width; j++) {
        const unknown = j < size ? first + j : steps[at + STEP_HEAD + j - size]!;
        sum -= values[base + k * width + j]! * motion[unknown]!;
      }
      motion[first + k] = sum * inverse[first + k]!;
    }
  }
}

/** Twice the elastic energy of a motion in all members and springs, from their deformations. */
function elasticEnergy(program: Program, memory: Memory, motion: Float64Array): number {
  const { rows, stiffness, elementUnknowns } = memory;
  let energy = 0;
  for (let element = 0; element < program.elements; element++) {
    for (let mode = 0; mode < MODES; mode++) {
      let amount = 0;
      const at = element * ELEMENT_ROWS + mode * ROW;
      for (let k = 0; k < ROW; k++) amount += rows[at + k]! * motion[elementUnknowns[element * ROW + k]!]!;
      energy += stiffness[element * MODES + mode]! * amount * amount;
    }
  }
  return energy;
}

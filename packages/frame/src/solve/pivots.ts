/**
 * Suspect pivots measured again. A pivot is the energy of the motion that moves its unknown by 1 and lets all earlier
 * ones follow; taken as a difference it may be only rounding, but as the sum of the springs' own energies it is exact, and a
 * true mechanism shows as a motion that deforms nothing.
 */
import { ELEMENT_ROWS, MODES, ROW } from '../assemble/deformations.ts';
import type { Measured } from './contact-state.ts';
import type { GapCoordinates } from './gap-coordinates.ts';
import type { GapLaws } from './gaps.ts';
import type { HeldInterface, Tangent } from './held-interface.ts';
import type { Memory } from './memory.ts';
import { type Program, STEP_HEAD } from './program.ts';
import type { Steps } from './reference-kernel.ts';
import { backSquare } from './square.ts';

/** Energy, as a share of what the motion would cost each unknown alone, below which nothing resists it. */
const NOTHING = 1e-18;

/** What a motion is completed and judged with. */
export interface Structure {
  readonly program: Program;
  readonly memory: Memory;
  readonly coordinates: GapCoordinates;
}

/** Measures the pivot of an unknown in the course of elimination; those before it have been eliminated. */
export function measureEliminated(structure: Structure, unknown: number): Measured {
  const motion = new Float64Array(structure.program.unknowns + 1);
  motion[unknown] = 1;
  return judge(structure, motion, unknown, 0);
}

/** The same for one of the unknowns that are eliminated under one set of supports. */
export function measureHeld(structure: Structure, { unknowns, whole }: HeldInterface, unknown: number): Measured {
  const part = new Float64Array(whole.n);
  part[unknown] = 1;
  backSquare(whole.values, whole.n, unknown, whole.inverse, part);
  return judge(structure, spread(structure, unknowns, part), structure.program.unknowns, 0);
}

/** The same in a tangent, at a state of contacts and sleeves. */
export function measureTangent(
  structure: Structure,
  laws: GapLaws,
  held: HeldInterface,
  { n, values, inverse }: Tangent,
  unknown: number,
  amounts: Float64Array,
): Measured {
  const { whole, eliminated, gapRows } = held;
  const measured = new Float64Array(n);
  measured[unknown] = 1;
  backSquare(values, n, unknown, inverse, measured);
  let gapEnergy = 0;
  laws.tangent(amounts, (k, row, weight, weight2) => {
    let amount = 0;
    for (let i = 0; i < n; i++) {
      amount += weight * gapRows[row * n + i]! * measured[i]!;
      if (weight2 !== 0) amount += weight2 * gapRows[(row + 1) * n + i]! * measured[i]!;
    }
    gapEnergy += k * amount * amount;
  });
  const part = new Float64Array(whole.n);
  part.set(measured, eliminated);
  backSquare(whole.values, whole.n, eliminated, whole.inverse, part);
  return judge(structure, spread(structure, held.unknowns, part), structure.program.unknowns, gapEnergy);
}

function spread({ program }: Structure, unknowns: Int32Array, part: Float64Array): Float64Array {
  const motion = new Float64Array(program.unknowns + 1);
  unknowns.forEach((unknown, i) => {
    motion[unknown] = part[i]!;
  });
  return motion;
}

/** Completes a motion with all unknowns before `below`, and compares its energy with what each would cost alone. */
function judge(
  { program, memory, coordinates }: Structure,
  motion: Float64Array,
  below: number,
  energy: number,
): Measured {
  const { interior, interiorSteps, stepAt } = program;
  if (below > interior) {
    follow(memory, motion, { from: interiorSteps, to: stepAt.length }, below);
  }
  let scale = 0;
  for (let i = interior; i < program.unknowns; i++) scale += memory.diagonal[i]! * motion[i]! * motion[i]!;
  if (below > interior) coordinates.restoreMotions(motion, 1);
  follow(memory, motion, { from: 0, to: interiorSteps }, below);
  for (let i = 0; i < interior; i++) scale += memory.diagonal[i]! * motion[i]! * motion[i]!;
  const pivot = energy + elasticEnergy(program, memory, motion);
  return { pivot, freeMotion: pivot > NOTHING * scale ? null : motion };
}

/** Lets the unknowns that the steps eliminated, as far as they are before `below`, follow the others. */
function follow({ values, inverse, steps, stepAt }: Memory, motion: Float64Array, range: Steps, below: number): void {
  for (let step = range.to - 1; step >= range.from; step--) {
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

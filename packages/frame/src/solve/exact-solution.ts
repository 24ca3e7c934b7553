/**
 * Every load case solved to the last digits: after the plain solution, what is out of balance is found from twofold
 * deformations and solved for again. Nearly rigid members then carry the right force, not the rounding of their motion.
 */
import { MODES } from '../assemble/deformations.ts';
import { type ExactRow, exactRows } from '../assemble/exact-rows.ts';
import { addLoads } from '../assemble/motions.ts';
import { addExactly, dot, type Twofold } from '../assemble/twofold.ts';
import type { FrameInputs } from '../model/compiled-frame.ts';
import type { Engine } from './engine.ts';

const MOST_ROUNDS = 10;
/** Work of a correction, as a share of the whole, that is below what a number can hold. */
const ENOUGH = 1e-33;

/** Deformations over numbered unknowns, and the springs or gap laws on them. */
interface Terms {
  readonly rows: readonly ExactRow[];
  /** 12 a row. */
  readonly unknowns: Int32Array;
  readonly force: (amounts: Float64Array) => Float64Array;
}

/** Does the work of `engine.solveLoads()` for a condensed frame. Throws InputError. */
export function solveExactly(engine: Engine, inputs: FrameInputs): void {
  const { program, kernel, topology } = engine;
  const { columns } = kernel;
  const { x, amounts } = kernel.memory();
  const terms = [elementTerms(engine, inputs), gapTerms(engine, inputs)] as const;
  topology.loads.forEach((_, column) => {
    const loads = new Float64Array((program.unknowns + 1) * columns);
    addLoads(loads, columns, engine.unknowns, inputs, program.interior);
    const load = Float64Array.from({ length: program.unknowns }, (__, i) => loads[i * columns + column]!);
    const { motion, deformations } = refine(engine, terms, load, column);
    motion.forEach(([hi], i) => {
      x[i * columns + column] = hi;
    });
    deformations[0].forEach((amount, i) => {
      amounts[i * columns + column] = amount;
    });
    engine.gapAmounts.set(deformations[1], engine.laws.rows * column);
  });
}

/** Settles contacts and sleeves, then corrects until the work of a correction no longer falls. */
function refine(engine: Engine, terms: readonly [Terms, Terms], load: Float64Array, column: number) {
  const size = load.length + 1;
  const first = new Float64Array(size);
  first.set(load);
  engine.settle(column, first);
  let motion = Array.from(first, (value): Twofold => [value, 0]);
  const work = load.reduce((sum, value, i) => sum + value * first[i]!, 0);
  let deformations: readonly [Float64Array, Float64Array] = [new Float64Array(0), new Float64Array(0)];
  let previous = Number.POSITIVE_INFINITY;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    deformations = [deformTerms(terms[0], motion), deformTerms(terms[1], motion)];
    const residual = new Float64Array(size);
    residual.set(load);
    terms.forEach((part, i) => {
      subtractForces(residual, part, deformations[i]!);
    });
    const step = residual.slice();
    engine.correct(column, step);
    const gain = step.reduce((sum, value, i) => sum + value * residual[i]!, 0);
    if (!(gain > ENOUGH * work && gain < previous / 4)) break;
    motion = motion.map(([hi, lo], i) => addExactly(hi, lo + step[i]!));
    previous = gain;
  }
  return { motion, deformations };
}

function deformTerms({ rows, unknowns }: Terms, motion: readonly Twofold[]): Float64Array {
  return Float64Array.from(rows, (row, r) => {
    const moved = row.map((_, k) => motion[unknowns[r * row.length + k]!]!);
    return dot(row, moved)[0];
  });
}

function subtractForces(residual: Float64Array, { rows, unknowns, force }: Terms, amounts: Float64Array): void {
  const none = residual.length - 1;
  force(amounts).forEach((value, r) => {
    const row = rows[r]!;
    row.forEach(([hi], k) => {
      const unknown = unknowns[r * row.length + k]!;
      if (unknown !== none) residual[unknown]! -= value * hi;
    });
  });
}

function elementTerms({ topology, elements, program, kernel, unknowns, writer }: Engine, inputs: FrameInputs): Terms {
  const exact = exactRows(topology, unknowns.freedoms.bodies, inputs, writer);
  const members = [...elements.ofMember.keys()].filter((member) => elements.ofMember[member]! >= 0);
  const rows = [...members.flatMap(exact.member), ...topology.springs.names.flatMap((_, s) => exact.spring(s))];
  const { stiffness } = kernel.memory();
  return {
    rows,
    unknowns: Int32Array.from(
      rows.flatMap((row, r) => row.map((_, k) => program.elementUnknowns[Math.floor(r / MODES) * 12 + k]!)),
    ),
    force: (amounts) => amounts.map((amount, i) => stiffness[i]! * amount),
  };
}

function gapTerms({ topology, unknowns, writer, laws, rowUnknowns }: Engine, inputs: FrameInputs): Terms {
  const exact = exactRows(topology, unknowns.freedoms.bodies, inputs, writer);
  return {
    rows: Array.from({ length: laws.rows }, (_, row) => exact.gap(row)),
    unknowns: rowUnknowns,
    force: (amounts) => {
      const force = new Float64Array(laws.rows);
      laws.force(amounts, force);
      return force;
    },
  };
}

/**
 * The machine behind a compiled frame. All that changes between supports, loads, contacts and sleeves is kept to the end
 * (the interface); the rest is condensed once for all load cases, and its motions are found for all of them at once.
 */
import { ROW } from '../assemble/deformations.ts';
import { type Elements, listElements, writeStiffness } from '../assemble/elements.ts';
import { type Freedoms, findFreedoms } from '../assemble/freedoms.ts';
import { addLoads, type Unknowns } from '../assemble/motions.ts';
import { type RowWriter, rowWriter } from '../assemble/rows.ts';
import type { Pairs, Topology } from '../assemble/topology.ts';
import type { FrameInputs, Supports } from '../model/compiled-frame.ts';
import { FreeMotion, type HeldInterface, stateSolver } from './contact-state.ts';
import { refuseMotion } from './free-motion.ts';
import { type GapLaws, gapLaws, SLEEVE_ROWS } from './gaps.ts';
import { holdInterface, refreshBlock, refreshGaps } from './held-interface.ts';
import { type Kernel, referenceKernel } from './kernel.ts';
import { measureInterior, measureKept } from './pivots.ts';
import { layOut, type Program } from './program.ts';
import { back, eliminate, forward, keepDiagonal } from './reference-kernel.ts';
import { solveSquare } from './square.ts';

export interface Engine {
  readonly topology: Topology;
  readonly elements: Elements;
  readonly program: Program;
  readonly kernel: Kernel;
  readonly writer: RowWriter;
  readonly unknowns: Unknowns;
  /** Assembles and condenses the frame as `inputs` has it. Throws InputError. */
  condense(): void;
  /** Finds the motions (in the kernel's `x`) and deformations under every load case. Throws InputError. */
  solveLoads(): void;
  /** For one load case: loads on the unknowns in (and a last 0), motions out. Throws InputError. */
  settle(column: number, x: Float64Array): void;
  /** The same with contacts and sleeves frozen as `settle` left them, for a small further load. */
  correct(column: number, x: Float64Array): void;
  readonly laws: GapLaws;
  /** 12 a row of a contact or sleeve: its unknowns. */
  readonly gapUnknowns: Int32Array;
  /** Amounts of contacts' and sleeves' rows, load after load. */
  readonly gapAmounts: Float64Array;
}

/** Builds the machine for support `sets`; `setOf` names the set of each load case by its index. */
export function buildEngine(
  topology: Topology,
  inputs: FrameInputs,
  sets: readonly Supports[],
  setOf: Int32Array,
  makeKernel: (program: Program, columns: number) => Kernel = referenceKernel,
): Engine {
  const freedoms = findFreedoms(topology, sets, inputs.nodesMm);
  const elements = listElements(topology, freedoms.bodies);
  const program = layOut({
    isUnknown: freedoms.isUnknown,
    isInterface: markInterface(topology, freedoms),
    elementFrom: elements.from,
    elementTo: elements.to,
  });
  const cases = setOf.length;
  const columns = cases + (cases % 2);
  const kernel = makeKernel(program, columns);
  const writer = rowWriter(topology, freedoms, elements, inputs);
  const unknowns: Unknowns = { freedoms, unknownOf: program.unknownOf, followers: writer.followers };
  const laws = gapLaws(inputs);
  const gapRows = new Float64Array(laws.rows * ROW);
  const gapUnknowns = listGapUnknowns(topology, freedoms, program);
  const held = freedoms.heldBy.map((slots) => holdInterface(program, slots, laws.rows));
  const interfaceSize = program.unknowns - program.interior;
  const solver = stateSolver(interfaceSize, laws, (set, tangent, unknown, amounts) =>
    measureKept(program, kernel.memory(), laws, set, tangent, unknown, amounts),
  );
  const force = new Float64Array(interfaceSize);
  const motion = new Float64Array(interfaceSize);
  const gapAmounts = new Float64Array(laws.rows * cases);

  function condense(): void {
    kernel.claim();
    const memory = kernel.memory();
    writer.writeElements(memory.rows);
    writer.writeGaps(gapRows);
    writeStiffness(memory.stiffness, elements, inputs, writer.lengthsMm);
    kernel.assemble();
    keepDiagonal(program, memory);
    if (kernel.eliminate() >= 0) {
      kernel.assemble();
      eliminate(program, memory, judgeInterior);
    }
    for (const set of held) {
      refreshBlock(set, program, memory);
      refreshGaps(set, program, gapRows, gapUnknowns);
    }
  }

  function solveLoads(): void {
    const { x } = kernel.memory();
    x.fill(0);
    if (addLoads(x, columns, unknowns, inputs, cases, program.interior)) kernel.forward();
    for (let column = 0; column < cases; column++) settleInterface(column, x, columns, column);
    kernel.back();
    kernel.deform();
  }

  function settle(column: number, x: Float64Array): void {
    const single = { ...kernel.memory(), x };
    forward(program, single, 1);
    settleInterface(column, x, 1, 0);
    back(program, single, 1);
  }

  function correct(column: number, x: Float64Array): void {
    const set = held[setOf[column]!]!;
    const single = { ...kernel.memory(), x };
    forward(program, single, 1);
    readKept(set, x, 1, 0, motion);
    const { values, n, inverse } = solver.tangent();
    solveSquare(values, n, inverse, motion);
    writeKept(set, x, 1, 0);
    back(program, single, 1);
  }

  /** Puts the interface's motions under one load case in the place of the loads, in one of `width` columns of `x`. */
  function settleInterface(load: number, x: Float64Array, width: number, column: number): void {
    const set = held[setOf[load]!]!;
    readKept(set, x, width, column, force);
    try {
      solver.solve(set, force, motion);
    } catch (error) {
      throw error instanceof FreeMotion ? refuse(error.motion, topology.loads[load] ?? null) : error;
    }
    writeKept(set, x, width, column);
    gapAmounts.set(solver.amounts, laws.rows * load);
  }

  function readKept({ kept }: HeldInterface, x: Float64Array, width: number, column: number, out: Float64Array): void {
    for (let i = 0; i < kept.length; i++) out[i] = x[(program.interior + kept[i]!) * width + column]!;
  }

  function writeKept({ kept }: HeldInterface, x: Float64Array, width: number, column: number): void {
    for (let i = program.interior; i <= program.unknowns; i++) x[i * width + column] = 0;
    for (let i = 0; i < kept.length; i++) x[(program.interior + kept[i]!) * width + column] = motion[i]!;
  }

  function refuse(free: Float64Array, load: string | null) {
    return refuseMotion(free, unknowns, inputs.nodesMm, topology.nodes, load);
  }

  function judgeInterior(unknown: number): number {
    const { pivot, freeMotion } = measureInterior(program, kernel.memory(), unknown);
    if (freeMotion) throw refuse(freeMotion, null);
    return pivot;
  }

  return {
    topology,
    elements,
    program,
    kernel,
    writer,
    unknowns,
    condense,
    solveLoads,
    settle,
    correct,
    laws,
    gapUnknowns,
    gapAmounts,
  };
}

/** What stays to the end: what support sets hold differently, and what contacts and sleeves can feel. */
function markInterface(
  { contacts, sleeves }: Topology,
  { bodies, followers, isUnknown, heldBy }: Freedoms,
): Uint8Array {
  const marks = new Uint8Array(isUnknown.length);
  for (const slots of heldBy) for (const slot of slots) marks[slot] = 1;
  for (const { from, to } of [contacts, sleeves]) {
    for (const node of [...from, ...to]) {
      const body = bodies.of[node]!;
      const isPlain = bodies.root[body] === node && !followers.has(body);
      marks.fill(1, body * 6, body * 6 + (isPlain ? 3 : 6));
    }
  }
  return marks.map((mark, slot) => mark & isUnknown[slot]!);
}

/** The unknowns of the twelve motions of each contact's row and each sleeve's rows. */
function listGapUnknowns({ contacts, sleeves }: Topology, { bodies }: Freedoms, program: Program): Int32Array {
  const rowOf = ({ from, to }: Pairs, i: number): number[] => {
    const [a, b] = [bodies.of[from[i]!]!, bodies.of[to[i]!]!];
    const motions = (body: number, skip: boolean) =>
      [0, 1, 2, 3, 4, 5].map((k) => (skip ? program.unknowns : program.unknownOf[body * 6 + k]!));
    return [...motions(a, false), ...motions(b, a === b)];
  };
  return Int32Array.from([
    ...contacts.names.flatMap((_, c) => rowOf(contacts, c)),
    ...sleeves.names.flatMap((_, s) => Array.from({ length: SLEEVE_ROWS }, () => rowOf(sleeves, s)).flat()),
  ]);
}

/**
 * The machine behind a compiled frame. What changes between supports, loads, contacts and sleeves is kept to the end (the
 * interface); the rest is condensed once for all load cases, and its motions are found for all of them at once.
 */
import { ROW } from '../assemble/deformations.ts';
import { type Elements, listElements, writeStiffness } from '../assemble/elements.ts';
import { type Freedoms, findFreedoms } from '../assemble/freedoms.ts';
import { addLoads, type Unknowns } from '../assemble/motions.ts';
import { type RowWriter, rowWriter } from '../assemble/rows.ts';
import type { Topology } from '../assemble/topology.ts';
import type { FrameInputs, Supports } from '../model/compiled-frame.ts';
import { findClusters, listRowSlots } from './clusters.ts';
import { FreeMotion } from './contact-state.ts';
import { refuseMotion } from './free-motion.ts';
import { gapCoordinates } from './gap-coordinates.ts';
import { type GapLaws, gapLaws } from './gaps.ts';
import { PLACE } from './groups.ts';
import { interfaceSolver } from './interface-solver.ts';
import { type Kernel, referenceKernel } from './kernel.ts';
import { measureEliminated } from './pivots.ts';
import { layOut, type Program } from './program.ts';
import { back, eliminate, forward, keepDiagonal } from './reference-kernel.ts';

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
  settle(load: number, x: Float64Array): void;
  /** The same with contacts and sleeves frozen as `settle` left them, for a small further load. */
  correct(load: number, x: Float64Array): void;
  readonly laws: GapLaws;
  /** 12 a row of a contact or sleeve: its unknowns. */
  readonly rowUnknowns: Int32Array;
  /** Amounts of contacts' and sleeves' rows, load after load. */
  readonly gapAmounts: Float64Array;
}

export interface EngineOptions {
  readonly sets: readonly Supports[];
  /** For each load case the index of its support set. */
  readonly setOf: Int32Array;
  readonly makeKernel?: (program: Program, columns: number) => Kernel;
  /** Nodes that are loaded most often: their motions stay to the end, which saves taking loads through the interior. */
  readonly loadedNodes?: readonly number[];
}

export function buildEngine(topology: Topology, inputs: FrameInputs, options: EngineOptions): Engine {
  const { sets, setOf, makeKernel = referenceKernel, loadedNodes = [] } = options;
  const freedoms = findFreedoms(topology, sets, inputs.nodesMm);
  const elements = listElements(topology, freedoms.bodies);
  const writer = rowWriter(topology, freedoms, elements, inputs);
  const laws = gapLaws(inputs);
  const rows = new Float64Array(laws.rows * ROW);
  const rowSlots = listRowSlots(topology, freedoms);
  writer.writeGaps(rows);
  const places = placeUnknowns(freedoms, loadedNodes);
  const clusters = findClusters(topology, freedoms, rows, rowSlots, places);
  const program = layOut({ places, elementFrom: elements.from, elementTo: elements.to });
  const cases = setOf.length;
  const columns = cases + (cases % 2);
  const kernel = makeKernel(program, columns);
  const unknowns: Unknowns = { freedoms, unknownOf: program.unknownOf, followers: writer.followers };
  const rowUnknowns = rowSlots.map((slot) => (slot < 0 ? program.unknowns : program.unknownOf[slot]!));
  const coordinates = gapCoordinates(program, clusters, rowUnknowns);
  const { heldBy } = freedoms;
  const ends = interfaceSolver(program, kernel.memory, coordinates, laws, rowUnknowns, heldBy, setOf);
  const gapAmounts = new Float64Array(laws.rows * cases);
  const geometry = watch([inputs.nodesMm, inputs.contactNormal, inputs.sleeveAxis]);
  const interior = { from: 0, to: program.interiorSteps };
  const hidden = { from: program.interiorSteps, to: program.stepAt.length };

  function condense(): void {
    const isLost = kernel.claim();
    const memory = kernel.memory();
    if (isLost || geometry.hasChanged()) {
      geometry.forget();
      writer.writeElements(memory.rows);
      writer.writeGaps(rows);
      coordinates.refresh(rows);
      geometry.keep();
    }
    writeStiffness(memory.stiffness, elements, inputs, writer.lengthsMm);
    try {
      factor(kernel.eliminate);
      ends.refresh();
    } catch (error) {
      throw inWords(error, null);
    }
  }

  /** Assembles and eliminates; where a pivot is suspect, once more with every such pivot measured. */
  function factor(take: Kernel['eliminate']): void {
    const memory = kernel.memory();
    kernel.assemble();
    keepDiagonal(program, memory);
    if (take(interior) < 0) {
      coordinates.changeBlock(memory);
      if (take(hidden) < 0) return;
    }
    factor((steps) => eliminate(memory, steps, judge));
  }

  function judge(unknown: number): number {
    const { pivot, freeMotion } = measureEliminated({ program, memory: kernel.memory(), coordinates }, unknown);
    if (freeMotion) throw new FreeMotion(freeMotion);
    return pivot;
  }

  function solveLoads(): void {
    const { x } = kernel.memory();
    x.fill(0);
    const isInside = addLoads(x, columns, unknowns, inputs, program.unknowns - lateUnknowns(program));
    if (isInside) {
      kernel.forward(interior);
      coordinates.changeLoads(x, columns);
      kernel.forward(hidden);
    }
    for (let load = 0; load < cases; load++) settleEnds(load, x, columns, load);
    kernel.back(hidden);
    coordinates.restoreMotions(x, columns);
    kernel.back(interior);
    kernel.deform();
  }

  function settle(load: number, x: Float64Array): void {
    throughEnds(x, () => settleEnds(load, x, 1, 0));
  }

  function correct(load: number, x: Float64Array): void {
    throughEnds(x, () => ends.correct(load, x, 1, 0));
  }

  /** Loads forward, the interface solved, motions back, in a vector of its own. */
  function throughEnds(x: Float64Array, solve: () => void): void {
    const single = { ...kernel.memory(), x };
    forward(single, interior, 1);
    coordinates.changeLoads(x, 1);
    forward(single, hidden, 1);
    solve();
    back(single, hidden, 1);
    coordinates.restoreMotions(x, 1);
    back(single, interior, 1);
  }

  function settleEnds(load: number, x: Float64Array, width: number, column: number): void {
    try {
      ends.settle(load, x, width, column);
    } catch (error) {
      throw inWords(error, topology.loads[load] ?? null);
    }
    for (let row = 0; row < laws.rows; row++) gapAmounts[laws.rows * load + row] = ends.amounts[row]!;
  }

  /** A free motion as a refusal that names it; any other fault as it is. */
  function inWords(error: unknown, load: string | null): unknown {
    if (!(error instanceof FreeMotion)) return error;
    return refuseMotion(error.motion, unknowns, inputs.nodesMm, topology.nodes, load);
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
    rowUnknowns,
    gapAmounts,
  };
}

const lateUnknowns = ({ unknowns, interior, hidden, gaps }: Program): number => unknowns - interior - hidden - gaps;

/** Places of all slots before contacts and sleeves take theirs: late what sets hold differently or loads act on. */
function placeUnknowns({ bodies, isUnknown, heldBy }: Freedoms, loadedNodes: readonly number[]): Uint8Array {
  const places: Uint8Array = isUnknown.map((is) => (is ? PLACE.interior : PLACE.none));
  for (const slots of heldBy) for (const slot of slots) places[slot] = PLACE.late;
  for (const node of loadedNodes) {
    const slot = bodies.of[node]! * 6;
    for (let k = slot; k < slot + 6; k++) if (isUnknown[k]) places[k] = PLACE.late;
  }
  return places;
}

/** Tells whether any number of these arrays is another than when they were last kept. */
function watch(arrays: readonly Float64Array[]) {
  const copies = arrays.map((array) => new Float64Array(array.length));
  let isKept = false;
  return {
    hasChanged: () => !isKept || arrays.some((array, a) => differs(array, copies[a]!)),
    forget: () => {
      isKept = false;
    },
    keep: () => {
      arrays.forEach((array, a) => {
        copies[a]!.set(array);
      });
      isKept = true;
    },
  };
}

function differs(a: Float64Array, b: Float64Array): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return true;
  return false;
}

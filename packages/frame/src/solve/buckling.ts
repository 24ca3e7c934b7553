/**
 * Linear buckling: the factor on a load at which the frame loses its stiffness, K + factor G singular. G holds the axial
 * forces only; members that carry any are cut into pieces; contacts and sleeves keep the tangent they ended with.
 */
import { MODES, ROW } from '../assemble/deformations.ts';
import { exactRows } from '../assemble/exact-rows.ts';
import { addLoads } from '../assemble/motions.ts';
import { subdivide } from '../assemble/subdivide.ts';
import type { FrameInputs, FrameOutputs, Supports } from '../model/compiled-frame.ts';
import { buildEngine, type Engine } from './engine.ts';
import { largestEigenvalue } from './lanczos.ts';

/** Pieces a member: the error of its own buckling is below 0.1 %, whatever its ends. */
const PIECES = 8;
/** Share of the largest end force below which an axial force is rounding. */
const NO_FORCE = 1e-10;
/** Share of the strongest effect of the axial forces below which a softening is rounding. */
const NO_BUCKLING = 1e-12;

/** For each load case the smallest positive factor, null where nothing can buckle. The frame has been solved. */
export function criticalFactors(
  engine: Engine,
  inputs: FrameInputs,
  outputs: FrameOutputs,
  supports: Supports,
): (number | null)[] {
  const { topology, writer } = engine;
  const cases = topology.loads.length;
  const members = topology.members.names.length;
  const pulls = topology.loads.map((_, load) => axialForces(outputs.memberEnds, load, members));
  const cut = subdivide(topology, inputs, writer.axes, (member) =>
    pulls.some((pull) => pull[member] !== 0) ? PIECES : 1,
  );
  const fine = buildEngine(cut.topology, cut.inputs, { sets: [supports], setOf: new Int32Array(cases) });
  fine.condense();
  const turns = listTurns(fine, cut.inputs);
  return pulls.map((pull, load) =>
    criticalFactor(fine, cut.inputs, turns, (piece) => pull[cut.memberOf[piece]!]!, load),
  );
}

/** Pull in each member; 0 where it is rounding beside the forces about it. */
function axialForces(ends: Float64Array, load: number, members: number): Float64Array {
  const mine = ends.subarray(load * members * 12, (load + 1) * members * 12);
  let scale = 0;
  for (let at = 0; at < mine.length; at++) if (at % 6 < 3) scale = Math.max(scale, Math.abs(mine[at]!));
  return Float64Array.from({ length: members }, (_, member) => {
    const pull = mine[member * 12 + 6]!;
    return Math.abs(pull) > NO_FORCE * scale ? pull : 0;
  });
}

/** The six turns of a piece that an axial force works on. */
interface PieceTurns {
  readonly piece: number;
  readonly element: number;
  /** 6 rows of 12, over its unknowns. */
  readonly rows: Float64Array;
  /** Twice the work of a unit pull in each. */
  readonly weights: readonly number[];
}

/** Chord's turn, sum and difference of the ends' turns from it, about z and about y. */
function listTurns({ topology, elements, unknowns, writer, kernel }: Engine, inputs: FrameInputs): PieceTurns[] {
  const exact = exactRows(topology, unknowns.freedoms.bodies, inputs, writer);
  const { stiffness } = kernel.memory();
  return [...elements.ofMember].flatMap((element, piece) => {
    if (element < 0) return [];
    const lengthMm = writer.lengthsMm[piece]!;
    const [aboutZ, aboutY] = exact.chords(piece);
    const [, , differenceZ, sumZ, differenceY, sumY] = exact.member(piece);
    const turns = [aboutZ, sumZ, differenceZ, aboutY, sumY, differenceY];
    const weights = [2, 4].flatMap((mode) => {
      // 1 + 12 E I / (k G A L^2), from the two stiffnesses E I / L and 3 E I / L over just that.
      const shear = (3 * stiffness[element * MODES + mode]!) / stiffness[element * MODES + mode + 1]! || 1;
      return turnWeights(lengthMm, shear);
    });
    return {
      piece,
      element,
      rows: Float64Array.from(
        turns.flatMap((row) => row ?? []),
        ([hi]) => hi,
      ),
      weights,
    };
  });
}

/**
 * Twice the work of a unit pull for a unit turn of the chord, of the sum and of the difference of the ends' turns from
 * it: the integral of the slope squared. `shear` is 1 + 12 E I / (k G A L^2).
 */
export function turnWeights(lengthMm: number, shear: number): [number, number, number] {
  return [lengthMm, lengthMm / (20 * shear * shear), lengthMm / 12];
}

function criticalFactor(
  engine: Engine,
  inputs: FrameInputs,
  pieces: readonly PieceTurns[],
  pullOf: (piece: number) => number,
  load: number,
): number | null {
  const loaded = pieces.filter(({ piece }) => pullOf(piece) !== 0);
  if (loaded.length === 0) return null;
  settleLoad(engine, inputs, load);
  const { unknowns, elementUnknowns } = engine.program;
  const { largest, scale } = largestEigenvalue({
    size: unknowns + 1,
    solve(b) {
      const x = b.slice();
      engine.correct(load, x);
      return x;
    },
    apply(v) {
      const out = new Float64Array(v.length);
      for (const turns of loaded) addSoftening(out, v, turns, elementUnknowns, -pullOf(turns.piece));
      out[unknowns] = 0;
      return out;
    },
  });
  return largest > NO_BUCKLING * scale ? 1 / largest : null;
}

/** Adds what a push in one piece does at a motion: the sum of push weight row (row . motion). */
function addSoftening(
  out: Float64Array,
  motion: Float64Array,
  { element, rows, weights }: PieceTurns,
  elementUnknowns: Int32Array,
  push: number,
): void {
  const first = element * ROW;
  for (let turn = 0; turn < MODES; turn++) {
    let amount = 0;
    for (let k = 0; k < ROW; k++) amount += rows[turn * ROW + k]! * motion[elementUnknowns[first + k]!]!;
    const force = push * weights[turn]! * amount;
    for (let k = 0; k < ROW; k++) out[elementUnknowns[first + k]!]! += force * rows[turn * ROW + k]!;
  }
}

/** Brings contacts and sleeves to their state under a load case, so that `correct` works with their tangent. */
function settleLoad(engine: Engine, inputs: FrameInputs, load: number): void {
  const { program, kernel } = engine;
  const { columns } = kernel;
  const loads = new Float64Array((program.unknowns + 1) * columns);
  addLoads(loads, columns, engine.unknowns, inputs, program.interior);
  engine.settle(
    load,
    Float64Array.from({ length: program.unknowns + 1 }, (_, i) => loads[i * columns + load]!),
  );
}

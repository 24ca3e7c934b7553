/**
 * Linear buckling: the factor on a load at which the frame loses its stiffness, K + factor G singular. G holds the axial
 * forces only; members that carry any are cut into pieces; contacts and sleeves keep the tangent they ended with.
 */
import { MODES } from '../assemble/deformations.ts';
import { type ExactRow, exactRows } from '../assemble/exact-rows.ts';
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
  const rows = bendingRows(fine, cut.inputs);
  return pulls.map((pull, load) =>
    criticalFactor(fine, cut.inputs, rows, (piece) => pull[cut.memberOf[piece]!]!, load),
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

/** The six turns of a piece that an axial force works on, over its unknowns. */
interface PieceRows {
  readonly piece: number;
  readonly element: number;
  readonly rows: readonly Float64Array[];
  /** Work of a unit pull in each, twice. */
  readonly weights: readonly number[];
}

/** Chord's turn, sum and difference of the ends' turns from it, about z and about y. */
function bendingRows({ topology, elements, unknowns, writer, kernel }: Engine, inputs: FrameInputs): PieceRows[] {
  const exact = exactRows(topology, unknowns.freedoms.bodies, inputs, writer);
  const { stiffness } = kernel.memory();
  return [...elements.ofMember].flatMap((element, piece) => {
    if (element < 0) return [];
    const lengthMm = writer.lengthsMm[piece]!;
    const [aboutZ, aboutY] = exact.chords(piece);
    const [, , differenceZ, sumZ, differenceY, sumY] = exact.member(piece);
    const plain = (row: ExactRow | undefined) => Float64Array.from(row ?? [], ([hi]) => hi);
    const weights = [2, 4].flatMap((mode) => {
      // 1 + 12 E I / (k G A L^2), from the two stiffnesses E I / L and 3 E I / L over just that.
      const shear = (3 * stiffness[element * MODES + mode]!) / stiffness[element * MODES + mode + 1]! || 1;
      return [lengthMm, lengthMm / (20 * shear * shear), lengthMm / 12];
    });
    return { piece, element, rows: [aboutZ, sumZ, differenceZ, aboutY, sumY, differenceY].map(plain), weights };
  });
}

function criticalFactor(
  engine: Engine,
  inputs: FrameInputs,
  pieces: readonly PieceRows[],
  pullOf: (piece: number) => number,
  load: number,
): number | null {
  const loaded = pieces.filter(({ piece }) => pullOf(piece) !== 0);
  if (loaded.length === 0) return null;
  settleLoad(engine, inputs, load);
  const { unknowns, elementUnknowns } = engine.program;
  const apply = (v: Float64Array): Float64Array => {
    const out = new Float64Array(v.length);
    for (const { piece, element, rows, weights } of loaded) {
      const mine = elementUnknowns.subarray(element * 12, element * 12 + 12);
      rows.forEach((row, i) => {
        const amount = row.reduce((sum, value, k) => sum + value * v[mine[k]!]!, 0);
        const force = -pullOf(piece) * weights[i]! * amount;
        row.forEach((value, k) => {
          out[mine[k]!]! += force * value;
        });
      });
    }
    out[unknowns] = 0;
    return out;
  };
  const solve = (b: Float64Array): Float64Array => {
    const x = b.slice();
    engine.correct(load, x);
    return x;
  };
  const { largest, scale } = largestEigenvalue({ size: unknowns + 1, solve, apply });
  return largest > NO_BUCKLING * scale ? 1 / largest : null;
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

/** Between the motions of nodes and the unknowns of their bodies: loads in, displacements out. */
import type { FrameInputs } from '../model/compiled-frame.ts';
import type { Freedoms } from './freedoms.ts';
import type { FollowerSupport } from './supports.ts';

/** Where the unknowns are: 6 numbers a body, and how bodies held at nodes that follow move. */
export interface Unknowns {
  readonly freedoms: Freedoms;
  readonly unknownOf: Int32Array;
  readonly followers: ReadonlyMap<number, FollowerSupport>;
}

/** The motions of every node from every column of `x`, 6 numbers a node, column after column. */
export function writeMotions(
  out: Float64Array,
  { freedoms, unknownOf, followers }: Unknowns,
  nodesMm: Float64Array,
  x: Float64Array,
  columns: number,
  cases: number,
): void {
  const { of, root: rootOf } = freedoms.bodies;
  const nodes = nodesMm.length / 3;
  for (let node = 0; node < nodes; node++) {
    const body = of[node]!;
    const root = rootOf[body]!;
    const basis = followers.get(body)?.basis;
    const x0 = nodesMm[node * 3]! - nodesMm[root * 3]!;
    const x1 = nodesMm[node * 3 + 1]! - nodesMm[root * 3 + 1]!;
    const x2 = nodesMm[node * 3 + 2]! - nodesMm[root * 3 + 2]!;
    for (let column = 0; column < cases; column++) {
      const at = (column * nodes + node) * 6;
      for (let k = 0; k < 6; k++) {
        out[at + k] = basis
          ? amountOf(basis, k, unknownOf, body, x, columns, column)
          : x[unknownOf[body * 6 + k]! * columns + column]!;
      }
      if (node === root) continue;
      const r0 = out[at + 3]!;
      const r1 = out[at + 4]!;
      const r2 = out[at + 5]!;
      out[at]! += r1 * x2 - r2 * x1;
      out[at + 1]! += r2 * x0 - r0 * x2;
      out[at + 2]! += r0 * x1 - r1 * x0;
    }
  }
}

/** One motion of the root of a body whose unknowns are amounts of free motions. */
function amountOf(
  basis: Float64Array,
  k: number,
  unknownOf: Int32Array,
  body: number,
  x: Float64Array,
  columns: number,
  column: number,
): number {
  let sum = 0;
  for (let i = 0; i < 6; i++) sum += basis[k * 6 + i]! * x[unknownOf[body * 6 + i]! * columns + column]!;
  return sum;
}

/** Adds all load cases, one a column. Returns whether any acts on an unknown before `first`. */
export function addLoads(
  x: Float64Array,
  columns: number,
  unknowns: Unknowns,
  inputs: FrameInputs,
  cases: number,
  first: number,
): boolean {
  const { loads, nodesMm } = inputs;
  const nodes = nodesMm.length / 3;
  let isBefore = false;
  for (let column = 0; column < cases; column++) {
    for (let node = 0; node < nodes; node++) {
      const at = (column * nodes + node) * 6;
      if (isIdle(loads, at)) continue;
      addNodeLoad(x, columns, column, unknowns, nodesMm, node, loads, at);
      isBefore ||= isOnEarlier(unknowns, node, first);
    }
  }
  return isBefore;
}

function isIdle(loads: Float64Array, at: number): boolean {
  for (let k = at; k < at + 6; k++) if (loads[k] !== 0) return false;
  return true;
}

function isOnEarlier({ freedoms, unknownOf }: Unknowns, node: number, first: number): boolean {
  const body = freedoms.bodies.of[node]!;
  for (let k = 0; k < 6; k++) if (unknownOf[body * 6 + k]! < first) return true;
  return false;
}

/** Adds a force and moment on a node, `loads[at..at+5]`, to the loads on the unknowns. */
function addNodeLoad(
  x: Float64Array,
  columns: number,
  column: number,
  { freedoms, unknownOf, followers }: Unknowns,
  nodesMm: Float64Array,
  node: number,
  loads: Float64Array,
  at: number,
): void {
  const body = freedoms.bodies.of[node]!;
  const root = freedoms.bodies.root[body]!;
  const six = loads.slice(at, at + 6);
  for (let k = 0; k < 3; k++) {
    const after = (k + 1) % 3;
    const last = (k + 2) % 3;
    const lever = nodesMm[node * 3 + after]! - nodesMm[root * 3 + after]!;
    const lever2 = nodesMm[node * 3 + last]! - nodesMm[root * 3 + last]!;
    six[3 + k]! += lever * loads[at + last]! - lever2 * loads[at + after]!;
  }
  const basis = followers.get(body)?.basis;
  for (let k = 0; k < 6; k++) {
    const slot = body * 6 + k;
    if (freedoms.isUnknown[slot] === 0) continue;
    let force = six[k]!;
    if (basis) {
      force = 0;
      for (let i = 0; i < 6; i++) force += basis[i * 6 + k]! * six[i]!;
    }
    x[unknownOf[slot]! * columns + column]! += force;
  }
}

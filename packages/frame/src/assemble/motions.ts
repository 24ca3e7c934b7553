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
  const nodes = of.length;
  for (let node = 0; node < nodes; node++) {
    const body = of[node]!;
    const root = rootOf[body]!;
    const basis = followers.get(body)?.basis;
    if (basis) writeAmounts(out, node, nodes, basis, unknownOf, body, x, columns, cases);
    else copyMotions(out, node, nodes, unknownOf, body * 6, x, columns, cases);
    if (node !== root) addLever(out, node, nodes, root, nodesMm, cases);
  }
}

/** The root's motions where they are the unknowns. */
function copyMotions(
  out: Float64Array,
  node: number,
  nodes: number,
  unknownOf: Int32Array,
  slot: number,
  x: Float64Array,
  columns: number,
  cases: number,
): void {
  const a = unknownOf[slot]! * columns;
  const b = unknownOf[slot + 1]! * columns;
  const c = unknownOf[slot + 2]! * columns;
  const d = unknownOf[slot + 3]! * columns;
  const e = unknownOf[slot + 4]! * columns;
  const f = unknownOf[slot + 5]! * columns;
  for (let column = 0, at = node * 6; column < cases; column++, at += nodes * 6) {
    out[at] = x[a + column]!;
    out[at + 1] = x[b + column]!;
    out[at + 2] = x[c + column]!;
    out[at + 3] = x[d + column]!;
    out[at + 4] = x[e + column]!;
    out[at + 5] = x[f + column]!;
  }
}

/** The root's motions where the unknowns are amounts of free motions. */
function writeAmounts(
  out: Float64Array,
  node: number,
  nodes: number,
  basis: Float64Array,
  unknownOf: Int32Array,
  body: number,
  x: Float64Array,
  columns: number,
  cases: number,
): void {
  for (let column = 0; column < cases; column++) {
    for (let k = 0; k < 6; k++) {
      let sum = 0;
      for (let i = 0; i < 6; i++) sum += basis[k * 6 + i]! * x[unknownOf[body * 6 + i]! * columns + column]!;
      out[(column * nodes + node) * 6 + k] = sum;
    }
  }
}

/** From the root's motions to a follower's: u + theta x r. */
function addLever(
  out: Float64Array,
  node: number,
  nodes: number,
  root: number,
  nodesMm: Float64Array,
  cases: number,
): void {
  const x = nodesMm[node * 3]! - nodesMm[root * 3]!;
  const y = nodesMm[node * 3 + 1]! - nodesMm[root * 3 + 1]!;
  const z = nodesMm[node * 3 + 2]! - nodesMm[root * 3 + 2]!;
  for (let column = 0, at = node * 6; column < cases; column++, at += nodes * 6) {
    const turnX = out[at + 3]!;
    const turnY = out[at + 4]!;
    const turnZ = out[at + 5]!;
    out[at]! += turnY * z - turnZ * y;
    out[at + 1]! += turnZ * x - turnX * z;
    out[at + 2]! += turnX * y - turnY * x;
  }
}

/** Adds all load cases, one a column. Returns whether any acts on an unknown before `first`. */
export function addLoads(
  x: Float64Array,
  columns: number,
  unknowns: Unknowns,
  inputs: FrameInputs,
  first: number,
): boolean {
  const { loads, nodesMm } = inputs;
  const nodes = nodesMm.length / 3;
  let isBefore = false;
  for (let at = 0; at < loads.length; at += 6) {
    if (isIdle(loads, at)) continue;
    const node = (at / 6) % nodes;
    addNodeLoad(x, columns, Math.floor(at / 6 / nodes), unknowns, nodesMm, node, loads, at);
    isBefore ||= isOnEarlier(unknowns, node, first);
  }
  return isBefore;
}

function isIdle(loads: Float64Array, at: number): boolean {
  return (
    loads[at] === 0 &&
    loads[at + 1] === 0 &&
    loads[at + 2] === 0 &&
    loads[at + 3] === 0 &&
    loads[at + 4] === 0 &&
    loads[at + 5] === 0
  );
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

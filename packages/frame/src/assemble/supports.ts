/**
 * What supports leave free. A support on a body's root simply takes freedoms away. Supports on nodes that follow tie
 * several motions of the root: there the unknowns are the amounts of the motions that all of them let pass, and the
 * reaction is shared among them as the smallest set of forces that does the work (unique unless one is to spare).
 */
import type { Supports } from '../model/compiled-frame.ts';
import type { Bodies } from './bodies.ts';
import { symmetricEigen } from './eigen.ts';
import { FREEDOMS } from './topology.ts';

/** Eigenvalue share below which a motion counts as free of a support: 1e-6 of the body's size, squared. */
const FREE = 1e-12;

/** Freedoms held at each node as bits, x lowest. */
export function supportMasks(supports: Supports, nodes: readonly string[]): Int32Array {
  const masks = new Int32Array(nodes.length);
  nodes.forEach((name, node) => {
    if (!Object.hasOwn(supports, name)) return;
    for (const freedom of supports[name] ?? []) masks[node]! |= 1 << FREEDOMS.indexOf(freedom);
  });
  return masks;
}

/** One held freedom of a node. */
export interface Hold {
  readonly node: number;
  readonly freedom: number;
}

/** The holds of each body, in the order of its nodes. */
export function holdsOfBodies(masks: Int32Array, bodies: Bodies): readonly (readonly Hold[])[] {
  const holds: Hold[][] = Array.from({ length: bodies.count }, () => []);
  masks.forEach((mask, node) => {
    for (let freedom = 0; freedom < 6; freedom++) {
      if (mask & (1 << freedom)) holds[bodies.of[node]!]!.push({ node, freedom });
    }
  });
  return holds;
}

export interface FollowerSupport {
  readonly holds: readonly Hold[];
  /** How many motions of the body are left free. */
  readonly freeCount: number;
  /** 6 x 6, row-major: root motion = basis times amounts; columns from freeCount on are 0. */
  readonly basis: Float64Array;
}

/** The motions of a body that its holds let pass. */
export function followerSupport(holds: readonly Hold[], root: number, nodesMm: Float64Array): FollowerSupport {
  const { rows, sizeMm } = holdRows(holds, root, nodesMm);
  const { values, vectors } = symmetricEigen(gram(rows), 6);
  const freeCount = values.filter((value) => value <= FREE * values[5]!).length;
  const basis = vectors.map((value, at) => (at % 6 < freeCount ? value / (at < 18 ? 1 : sizeMm) : 0));
  return { holds, freeCount, basis };
}

/** Forces along the holds, smallest in the mean square, that together equal a force and moment at the root. */
export function shareReaction(
  holds: readonly Hold[],
  root: number,
  nodesMm: Float64Array,
  reaction: readonly number[],
): number[] {
  const { rows, sizeMm } = holdRows(holds, root, nodesMm);
  const scaled = reaction.map((value, k) => value / (k < 3 ? 1 : sizeMm));
  const { values, vectors } = symmetricEigen(gram(rows), 6);
  const shares = new Array<number>(6).fill(0);
  for (let c = 0; c < 6; c++) {
    if (values[c]! <= FREE * values[5]!) continue;
    const amount = scaled.reduce((sum, value, k) => sum + value * vectors[k * 6 + c]!, 0) / values[c]!;
    for (let k = 0; k < 6; k++) shares[k]! += amount * vectors[k * 6 + c]!;
  }
  return rows.map((row) => row.reduce((sum, value, k) => sum + value * shares[k]!, 0));
}

/** Each hold as a row over the root's motions, rotations scaled by the body's size so that all are lengths. */
function holdRows(holds: readonly Hold[], root: number, nodesMm: Float64Array) {
  const levers = holds.map(({ node }) => [0, 1, 2].map((k) => nodesMm[node * 3 + k]! - nodesMm[root * 3 + k]!));
  const sizeMm = Math.max(...levers.flat().map(Math.abs)) || 1;
  const rows = holds.map(({ freedom }, i) => {
    const row = [0, 0, 0, 0, 0, 0];
    row[freedom] = freedom < 3 ? 1 : 1 / sizeMm;
    if (freedom < 3) {
      // A unit force along axis f at lever r has the moment r x e_f.
      const [after, last] = [(freedom + 1) % 3, (freedom + 2) % 3];
      row[3 + after] = levers[i]![last]! / sizeMm;
      row[3 + last] = -levers[i]![after]! / sizeMm;
    }
    return row;
  });
  return { rows, sizeMm };
}

function gram(rows: readonly (readonly number[])[]): Float64Array {
  const product = new Float64Array(36);
  for (const row of rows) {
    for (let at = 0; at < 36; at++) product[at]! += row[Math.floor(at / 6)]! * row[at % 6]!;
  }
  return product;
}

/**
 * Rigid bodies: nodes tied by rigids move as one, u_node = u_root + theta x (node - root), so only the root has unknowns.
 * A chain or a ring of rigids is one body; a node without rigids is a body of its own.
 */
import type { Pairs } from './topology.ts';

export interface Bodies {
  readonly count: number;
  /** Node -> its body. */
  readonly of: Int32Array;
  /** Body -> the node whose six motions are its unknowns. */
  readonly root: Int32Array;
}

/** Joins nodes into bodies; the root is the node that `weight` (its supports) puts first, else the first in the file. */
export function rigidBodies(nodeCount: number, rigids: Pairs, weight: (node: number) => number): Bodies {
  const parent = Int32Array.from({ length: nodeCount }, (_, node) => node);
  const top = (node: number): number => {
    let at = node;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  };
  rigids.names.forEach((_, i) => {
    parent[top(rigids.to[i]!)] = top(rigids.from[i]!);
  });

  const of = new Int32Array(nodeCount);
  const root: number[] = [];
  const bodyOfTop = new Map<number, number>();
  for (let node = 0; node < nodeCount; node++) {
    const body = bodyOfTop.get(top(node)) ?? root.length;
    if (body === root.length) {
      bodyOfTop.set(top(node), body);
      root.push(node);
    } else if (weight(node) > weight(root[body]!)) root[body] = node;
    of[node] = body;
  }
  return { count: root.length, of, root: Int32Array.from(root) };
}

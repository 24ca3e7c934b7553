/** A model's names as indices: what is tied to what, which no solve changes. */
import type { FrameModel, Freedom } from '../model/frame-model.ts';

/** Ends are node indices; -1 is the ground. */
export interface Pairs {
  readonly names: readonly string[];
  readonly from: Int32Array;
  readonly to: Int32Array;
}

export interface Topology {
  readonly nodes: readonly string[];
  readonly members: Pairs;
  /** 3 a member; 0, 0, 0 where the model gives none. */
  readonly yAxis: Float64Array;
  readonly rigids: Pairs;
  readonly springs: Pairs;
  readonly contacts: Pairs;
  /** `from` is the inner node, `to` the outer. */
  readonly sleeves: Pairs;
  readonly loads: readonly string[];
}

export const FREEDOMS: readonly Freedom[] = ['x', 'y', 'z', 'rx', 'ry', 'rz'];

/** Indices for every name of a sound model. */
export function readTopology(model: FrameModel): Topology {
  const nodes = Object.keys(model.nodes);
  const indexOf = nodeIndex(nodes);
  const sleeves = Object.entries(model.sleeves).map(
    ([name, { inner, outer }]) => [name, { from: inner, to: outer }] as const,
  );
  return {
    nodes,
    members: pairs(Object.entries(model.members), indexOf),
    yAxis: Float64Array.from(Object.values(model.members).flatMap((member) => member.yAxis ?? [0, 0, 0])),
    rigids: pairs(Object.entries(model.rigids), indexOf),
    springs: pairs(Object.entries(model.springs), indexOf),
    contacts: pairs(Object.entries(model.contacts), indexOf),
    sleeves: pairs(sleeves, indexOf),
    loads: Object.keys(model.loads),
  };
}

/** Looks a node's name up; the ground (null) is -1. */
export function nodeIndex(nodes: readonly string[]): (name: string | null) => number {
  const index = new Map(nodes.map((name, i) => [name, i]));
  return (name) => {
    if (name === null) return -1;
    const found = index.get(name);
    if (found === undefined) throw new Error(`node "${name}" is not in the model`);
    return found;
  };
}

function pairs(
  entries: readonly (readonly [string, { readonly from: string; readonly to: string | null }])[],
  indexOf: (name: string | null) => number,
): Pairs {
  return {
    names: entries.map(([name]) => name),
    from: Int32Array.from(entries, ([, pair]) => indexOf(pair.from)),
    to: Int32Array.from(entries, ([, pair]) => indexOf(pair.to)),
  };
}

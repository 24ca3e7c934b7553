/** Which motions of which bodies are unknowns, and which of them each set of supports holds besides. */
import { InputError } from '@bonewright/fault';
import type { Supports } from '../model/compiled-frame.ts';
import { type Bodies, rigidBodies } from './bodies.ts';
import { type FollowerSupport, followerSupport, type Hold, holdsOfBodies, supportMasks } from './supports.ts';
import type { Topology } from './topology.ts';

export interface Freedoms {
  readonly bodies: Bodies;
  /** Bodies whose unknowns are amounts of free motions, not the root's own motions. */
  readonly followers: ReadonlyMap<number, FollowerSupport>;
  /** 1 where motion k of body b, slot 6 b + k, is an unknown in some set. */
  readonly isUnknown: Uint8Array;
  /** For each set the slots among them that it holds. */
  readonly heldBy: readonly Int32Array[];
}

/** Throws InputError where sets differ on a node that follows another. */
export function findFreedoms(topology: Topology, sets: readonly Supports[], nodesMm: Float64Array): Freedoms {
  const masks = sets.map((supports) => supportMasks(supports, topology.nodes));
  const any = topology.nodes.map((_, node) => masks.reduce((all, mask) => all | mask[node]!, 0));
  const common = Int32Array.from(topology.nodes, (_, node) => masks.reduce((all, mask) => all & mask[node]!, 63));
  const bodies = rigidBodies(topology.nodes.length, topology.rigids, (node) => bitCount(any[node]!));
  const isUnknown = new Uint8Array(bodies.count * 6).fill(1);
  const followers = new Map<number, FollowerSupport>();
  holdsOfBodies(common, bodies).forEach((holds, body) => {
    const root = bodies.root[body]!;
    if (holds.every(({ node }) => node === root)) {
      for (const { freedom } of holds) isUnknown[body * 6 + freedom] = 0;
      return;
    }
    const support = followerSupport(holds, root, nodesMm);
    followers.set(body, support);
    isUnknown.fill(0, body * 6 + support.freeCount, body * 6 + 6);
  });
  const heldBy = masks.map((mask) => {
    const extra = mask.map((bits, node) => bits & ~common[node]!);
    const slots = holdsOfBodies(extra, bodies).flatMap((holds, body) =>
      holds.map((hold) => slotOf(hold, body, bodies, followers, topology)),
    );
    return Int32Array.from(slots);
  });
  return { bodies, followers, isUnknown, heldBy };
}

function slotOf(
  { node, freedom }: Hold,
  body: number,
  bodies: Bodies,
  followers: ReadonlyMap<number, FollowerSupport>,
  { nodes }: Topology,
): number {
  if (bodies.root[body] === node && !followers.has(body)) return body * 6 + freedom;
  throw new InputError(
    `the support sets differ at "${nodes[node]}", which follows another node`,
    `supports.${nodes[node]}`,
    'let sets differ only on nodes of their own',
  );
}

function bitCount(mask: number): number {
  let count = 0;
  for (let bits = mask; bits > 0; bits >>= 1) count += bits & 1;
  return count;
}

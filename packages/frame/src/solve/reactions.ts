/** Reactions at supported nodes: what balances the members, springs, contacts, sleeves and loads on them. */
import { AXES } from '../assemble/axes.ts';
import { MODES } from '../assemble/deformations.ts';
import { holdsOfBodies, shareReaction, supportMasks } from '../assemble/supports.ts';
import type { FrameInputs, FrameOutputs, Supports } from '../model/compiled-frame.ts';
import type { Engine } from './engine.ts';

/**
 * For each supported node (in the order of `supports`) the six forces and moments of the support on the frame under one
 * load case; 0 where it does not hold.
 */
export function findReactions(
  engine: Engine,
  inputs: FrameInputs,
  outputs: FrameOutputs,
  supports: Supports,
  load: number,
): Map<string, Float64Array> {
  const { nodes } = engine.topology;
  const { bodies } = engine.unknowns.freedoms;
  const needed = neededForces(engine, inputs, outputs, load);
  const reactions = new Float64Array(nodes.length * 6);
  holdsOfBodies(supportMasks(supports, nodes), bodies).forEach((holds, body) => {
    if (holds.length === 0) return;
    const root = bodies.root[body]!;
    const total = forceOnBody(needed, bodies.of, body, root, inputs.nodesMm);
    shareReaction(holds, root, inputs.nodesMm, total).forEach((share, i) => {
      const { node, freedom } = holds[i]!;
      reactions[node * 6 + freedom] = share;
    });
  });
  return new Map(
    Object.keys(supports).map((name) => {
      const at = nodes.indexOf(name) * 6;
      return [name, reactions.slice(at, at + 6)];
    }),
  );
}

/** For each node the force and moment that something must add to keep it in balance. */
function neededForces(engine: Engine, inputs: FrameInputs, outputs: FrameOutputs, load: number): Float64Array {
  const width = engine.topology.nodes.length * 6;
  const needed = inputs.loads.slice(load * width, (load + 1) * width).map((force) => -force);
  addMembers(needed, engine, outputs.memberEnds, load);
  addSprings(needed, engine, load);
  addGaps(needed, engine, load);
  return needed;
}

function addMembers(needed: Float64Array, { topology, writer }: Engine, ends: Float64Array, load: number): void {
  const { members } = topology;
  members.names.forEach((_, m) => {
    const at = (load * members.names.length + m) * 12;
    for (let part = 0; part < 4; part++) {
      const node = part < 2 ? members.from[m]! : members.to[m]!;
      for (let k = 0; k < 3; k++) {
        for (let local = 0; local < 3; local++) {
          const axis = writer.axes[m * AXES + local * 3 + k]!;
          needed[node * 6 + 3 * (part % 2) + k]! += axis * ends[at + 3 * part + local]!;
        }
      }
    }
  });
}

function addSprings(needed: Float64Array, { topology, elements, kernel }: Engine, load: number): void {
  const { stiffness, amounts } = kernel.memory();
  const { from, to } = topology.springs;
  elements.ofSpring.forEach((element, s) => {
    for (let k = 0; k < 6; k++) {
      const mode = element * MODES + k;
      const force = stiffness[mode]! * amounts[mode * kernel.columns + load]!;
      needed[from[s]! * 6 + k]! -= force;
      if (to[s]! >= 0) needed[to[s]! * 6 + k]! += force;
    }
  });
}

function addGaps(needed: Float64Array, { topology, writer, laws, gapAmounts }: Engine, load: number): void {
  const force = new Float64Array(laws.rows);
  laws.force(gapAmounts.subarray(load * laws.rows, (load + 1) * laws.rows), force);
  const { contacts, sleeves } = topology;
  force.forEach((value, row) => {
    const isContact = row < laws.contacts;
    const { from, to } = isContact ? contacts : sleeves;
    const i = isContact ? row : (row - laws.contacts) >> 1;
    for (let k = 0; k < 3; k++) {
      needed[from[i]! * 6 + k]! -= value * writer.gapDirections[row * 3 + k]!;
      needed[to[i]! * 6 + k]! += value * writer.gapDirections[row * 3 + k]!;
    }
  });
}

/** The needed forces of a body's nodes as one force and moment at its root. */
function forceOnBody(
  needed: Float64Array,
  of: Int32Array,
  body: number,
  root: number,
  nodesMm: Float64Array,
): number[] {
  const total = [0, 0, 0, 0, 0, 0];
  of.forEach((mine, node) => {
    if (mine !== body) return;
    for (let k = 0; k < 6; k++) total[k]! += needed[node * 6 + k]!;
    const lever = (axis: number) => nodesMm[node * 3 + axis]! - nodesMm[root * 3 + axis]!;
    for (let k = 0; k < 3; k++) {
      const [after, last] = [(k + 1) % 3, (k + 2) % 3];
      total[3 + k]! += lever(after) * needed[node * 6 + last]! - lever(last) * needed[node * 6 + after]!;
    }
  });
  return total;
}

/** Cuts members into equal pieces, so that each can bend as it buckles. */
import type { FrameInputs } from '../model/compiled-frame.ts';
import { AXES } from './axes.ts';
import type { Topology } from './topology.ts';

export interface Subdivision {
  readonly topology: Topology;
  readonly inputs: FrameInputs;
  /** Piece -> the member it is cut from. */
  readonly memberOf: Int32Array;
}

/** `pieces` says into how many each member is cut; `axes` holds 9 numbers a member (x, y, z). */
export function subdivide(
  topology: Topology,
  inputs: FrameInputs,
  axes: Float64Array,
  pieces: (member: number) => number,
): Subdivision {
  const { members } = topology;
  const nodes = [...topology.nodes];
  const places = [...inputs.nodesMm];
  const cuts: { from: number; to: number; member: number }[] = [];
  members.names.forEach((name, member) => {
    const [from, to, count] = [members.from[member]!, members.to[member]!, pieces(member)];
    let last = from;
    for (let piece = 1; piece <= count; piece++) {
      const next = piece === count ? to : nodes.push(`${name} at ${piece}/${count}`) - 1;
      if (next !== to) {
        for (let k = 0; k < 3; k++) {
          const [a, b] = [inputs.nodesMm[from * 3 + k]!, inputs.nodesMm[to * 3 + k]!];
          places.push(a + ((b - a) * piece) / count);
        }
      }
      cuts.push({ from: last, to: next, member });
      last = next;
    }
  });
  const memberOf = Int32Array.from(cuts, (cut) => cut.member);
  const spread = (values: Float64Array) => Float64Array.from(memberOf, (member) => values[member]!);
  return {
    memberOf,
    topology: {
      ...topology,
      nodes,
      members: {
        names: cuts.map((cut) => members.names[cut.member]!),
        from: Int32Array.from(cuts, (cut) => cut.from),
        to: Int32Array.from(cuts, (cut) => cut.to),
      },
      yAxis: Float64Array.from(cuts.flatMap((cut) => [...axes.subarray(cut.member * AXES + 3, cut.member * AXES + 6)])),
    },
    inputs: {
      ...inputs,
      nodesMm: Float64Array.from(places),
      youngMPa: spread(inputs.youngMPa),
      shearModulusMPa: spread(inputs.shearModulusMPa),
      areaMm2: spread(inputs.areaMm2),
      iyMm4: spread(inputs.iyMm4),
      izMm4: spread(inputs.izMm4),
      jMm4: spread(inputs.jMm4),
      shearCoefficient: spread(inputs.shearCoefficient),
      loads: spreadLoads(inputs.loads, topology.loads.length, topology.nodes.length, nodes.length),
    },
  };
}

function spreadLoads(loads: Float64Array, cases: number, nodes: number, nodesNow: number): Float64Array {
  const spread = new Float64Array(cases * nodesNow * 6);
  for (let load = 0; load < cases; load++) {
    spread.set(loads.subarray(load * nodes * 6, (load + 1) * nodes * 6), load * nodesNow * 6);
  }
  return spread;
}

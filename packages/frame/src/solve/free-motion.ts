/** A motion that nothing resists, said in words: the node that moves most and the direction it is free in. */
import { InputError } from '@bonewright/fault';
import { type Unknowns, writeMotions } from '../assemble/motions.ts';

const AXIS = ['x', 'y', 'z'];

/** The refusal for a free motion of all unknowns, under a load case or (null) under any. */
export function refuseMotion(
  motion: Float64Array,
  unknowns: Unknowns,
  nodesMm: Float64Array,
  nodes: readonly string[],
  load: string | null,
): InputError {
  const six = new Float64Array(nodes.length * 6);
  writeMotions(six, unknowns, nodesMm, motion, 1, 1);
  const shift = largest(six, (at) => at % 6 < 3);
  const turn = largest(six, (at) => at % 6 >= 3);
  const turns = Math.abs(six[turn] ?? 0) * frameSize(nodesMm) > Math.abs(six[shift] ?? 0);
  const at = turns ? turn : shift;
  const node = nodes[Math.floor(at / 6)] ?? '';
  const axis = AXIS[at % 3] ?? '';
  const way = turns ? `turning about ${axis}` : `moving along ${axis}`;
  const under = load === null ? '' : ` under load "${load}"`;
  const hold = `hold "${turns ? 'r' : ''}${axis}" there or tie the node to something that is held`;
  return new InputError(`nothing stops node "${node}" from ${way}${under}`, `nodes.${node}`, hold);
}

function largest(values: Float64Array, wanted: (at: number) => boolean): number {
  let best = -1;
  values.forEach((value, at) => {
    // A later value must be clearly larger, so that rounding does not pick the node.
    if (wanted(at) && (best < 0 || Math.abs(value) > 1.000001 * Math.abs(values[best] ?? 0))) best = at;
  });
  return best;
}

/** The diagonal of the box about the nodes. */
function frameSize(nodesMm: Float64Array): number {
  const spans = [0, 1, 2].map((k) => {
    const places = nodesMm.filter((_, at) => at % 3 === k);
    return places.reduce((a, b) => Math.max(a, b)) - places.reduce((a, b) => Math.min(a, b));
  });
  return Math.hypot(...spans) || 1;
}

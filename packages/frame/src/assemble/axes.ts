/**
 * Local axes of a member: x from `from` to `to`; y is `yAxis` made square to x (without one global z, or global y where
 * the member runs along global z); z = x cross y.
 */
import { InputError } from '@bonewright/fault';

/** Sine of the angle below which two directions count as one (the contract's figure for the default y axis). */
const ALONG = 1e-6;
/** Share of the ends' distance from the origin below which a member has no length: its digits are gone. */
const NO_LENGTH = 1e-12;

/** Numbers a set of axes takes: x, y and z in global axes. */
export const AXES = 9;

/**
 * Writes the axes of a member at `out[at...at + 8]` and returns its length.
 * `nodesMm` holds the ends at index `from` and `to`; `yAxis` at `yAt` holds 0, 0, 0 where none is given.
 * Throws InputError for a member of no length and for a `yAxis` along the member.
 */
export function writeMemberAxes(
  out: Float64Array,
  at: number,
  nodesMm: Float64Array,
  from: number,
  to: number,
  yAxis: Float64Array,
  yAt: number,
  name: string,
): number {
  const ax = nodesMm[from]!;
  const ay = nodesMm[from + 1]!;
  const az = nodesMm[from + 2]!;
  const bx = nodesMm[to]!;
  const by = nodesMm[to + 1]!;
  const bz = nodesMm[to + 2]!;
  const lengthMm = norm(bx - ax, by - ay, bz - az);
  if (!(lengthMm > NO_LENGTH * (norm(ax, ay, az) + norm(bx, by, bz)))) {
    throw new InputError(`member "${name}" has no length`, `members.${name}`, 'join two nodes that lie apart');
  }
  const x0 = (bx - ax) / lengthMm;
  const x1 = (by - ay) / lengthMm;
  const x2 = (bz - az) / lengthMm;
  const w0 = yAxis[yAt]!;
  let w1 = yAxis[yAt + 1]!;
  let w2 = yAxis[yAt + 2]!;
  if (w0 === 0 && w1 === 0 && w2 === 0) {
    const isUpright = norm(x0, x1, 0) < ALONG;
    w1 = isUpright ? 1 : 0;
    w2 = isUpright ? 0 : 1;
  }
  const s0 = x1 * w2 - x2 * w1;
  const s1 = x2 * w0 - x0 * w2;
  const s2 = x0 * w1 - x1 * w0;
  const square = norm(s0, s1, s2);
  if (!(square >= ALONG * norm(w0, w1, w2))) {
    throw new InputError(`yAxis of member "${name}" points along it`, `members.${name}.yAxis`, 'turn it across');
  }
  const z0 = s0 / square;
  const z1 = s1 / square;
  const z2 = s2 / square;
  out[at] = x0;
  out[at + 1] = x1;
  out[at + 2] = x2;
  out[at + 3] = z1 * x2 - z2 * x1;
  out[at + 4] = z2 * x0 - z0 * x2;
  out[at + 5] = z0 * x1 - z1 * x0;
  out[at + 6] = z0;
  out[at + 7] = z1;
  out[at + 8] = z2;
  return lengthMm;
}

const norm = (a: number, b: number, c: number): number => Math.sqrt(a * a + b * b + c * c);

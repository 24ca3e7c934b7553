/** Writes the deformation rows of all elements, contacts and sleeves from the places of the nodes. */
import type { FrameInputs } from '../model/compiled-frame.ts';
import { AXES, writeMemberAxes } from './axes.ts';
import {
  ELEMENT_ROWS,
  foldRows,
  MODES,
  projectRows,
  ROW,
  writeGapRow,
  writeMemberRows,
  writeSpringRows,
} from './deformations.ts';
import type { Elements } from './elements.ts';
import type { Freedoms } from './freedoms.ts';
import { type FollowerSupport, followerSupport } from './supports.ts';
import type { Pairs, Topology } from './topology.ts';

export interface RowWriter {
  /** Rewrites all rows, `lengthsMm` and `axes` (9 a member) from the places of the nodes. Throws InputError. */
  writeElements(rows: Float64Array): void;
  /** Rewrites the rows of contacts (1 each) and sleeves (2 each). */
  writeGaps(rows: Float64Array): void;
  readonly lengthsMm: Float64Array;
  readonly axes: Float64Array;
  /** 3 a row of a contact or sleeve: the direction it measures along. */
  readonly gapDirections: Float64Array;
  /** The free motions of bodies held at nodes that follow, as the nodes lie now. */
  readonly followers: ReadonlyMap<number, FollowerSupport>;
}

export function rowWriter(topology: Topology, freedoms: Freedoms, elements: Elements, inputs: FrameInputs): RowWriter {
  const { members, springs, contacts, sleeves, yAxis } = topology;
  const { bodies } = freedoms;
  const { nodesMm } = inputs;
  const followers = new Map(freedoms.followers);
  const lengthsMm = new Float64Array(members.names.length);
  const axes = new Float64Array(members.names.length * AXES);
  const leverFrom = new Float64Array(3);
  const leverTo = new Float64Array(3);
  const gapDirections = new Float64Array(3 * (contacts.names.length + 2 * sleeves.names.length));

  function writeElements(rows: Float64Array): void {
    for (const [body, { holds }] of freedoms.followers) {
      followers.set(body, followerSupport(holds, bodies.root[body]!, nodesMm));
    }
    for (let m = 0; m < members.names.length; m++) {
      const from = members.from[m]! * 3;
      const to = members.to[m]! * 3;
      lengthsMm[m] = writeMemberAxes(axes, m * AXES, nodesMm, from, to, yAxis, m * 3, members.names[m]!);
      const element = elements.ofMember[m]!;
      if (element < 0) continue;
      readLevers(members, m);
      const at = element * ELEMENT_ROWS;
      writeMemberRows(rows, at, axes, m * AXES, lengthsMm[m]!, leverFrom, leverTo);
      tieToBodies(rows, at, MODES, members, m);
    }
    for (let s = 0; s < springs.names.length; s++) {
      readLevers(springs, s);
      const at = elements.ofSpring[s]! * ELEMENT_ROWS;
      writeSpringRows(rows, at, leverFrom, leverTo);
      tieToBodies(rows, at, MODES, springs, s);
    }
  }

  function writeGaps(rows: Float64Array): void {
    const count = contacts.names.length;
    for (let c = 0; c < count; c++) {
      writeUnit(gapDirections, c * 3, inputs.contactNormal, c * 3);
      writeGap(rows, c, contacts, c);
    }
    for (let s = 0; s < sleeves.names.length; s++) {
      writeAcross(gapDirections, (count + 2 * s) * 3, inputs.sleeveAxis, s * 3);
      writeGap(rows, count + 2 * s, sleeves, s);
      writeGap(rows, count + 2 * s + 1, sleeves, s);
    }
  }

  function writeGap(rows: Float64Array, row: number, pairs: Pairs, i: number): void {
    const x = gapDirections[row * 3]!;
    const y = gapDirections[row * 3 + 1]!;
    const z = gapDirections[row * 3 + 2]!;
    readLevers(pairs, i);
    writeGapRow(rows, row * ROW, x, y, z, leverFrom, leverTo);
    tieToBodies(rows, row * ROW, 1, pairs, i);
  }

  function readLevers({ from, to }: Pairs, i: number): void {
    readLever(leverFrom, from[i]!);
    readLever(leverTo, to[i]!);
  }

  function readLever(lever: Float64Array, node: number): void {
    const root = node < 0 ? node : bodies.root[bodies.of[node]!]!;
    for (let k = 0; k < 3; k++) lever[k] = root === node ? 0 : nodesMm[node * 3 + k]! - nodesMm[root * 3 + k]!;
  }

  /** Brings rows over the roots' motions to rows over the unknowns. */
  function tieToBodies(rows: Float64Array, at: number, count: number, { from, to }: Pairs, i: number): void {
    const bodyFrom = bodies.of[from[i]!]!;
    const bodyTo = to[i]! < 0 ? -1 : bodies.of[to[i]!]!;
    if (bodyFrom === bodyTo) foldRows(rows, at, count);
    if (followers.size === 0) return;
    const [basisFrom, basisTo] = [followers.get(bodyFrom)?.basis, followers.get(bodyTo)?.basis];
    if (basisFrom) projectRows(rows, at, count, basisFrom);
    if (basisTo && bodyFrom !== bodyTo) projectRows(rows, at + 6, count, basisTo);
  }

  return { writeElements, writeGaps, lengthsMm, axes, gapDirections, followers };
}

function writeUnit(out: Float64Array, at: number, vector: Float64Array, from: number): void {
  const [x, y, z] = [vector[from]!, vector[from + 1]!, vector[from + 2]!];
  const size = Math.sqrt(x * x + y * y + z * z);
  out[at] = x / size;
  out[at + 1] = y / size;
  out[at + 2] = z / size;
}

/** Two unit directions square to an axis and to each other, written at `out[at..at+5]`. */
function writeAcross(out: Float64Array, at: number, axis: Float64Array, from: number): void {
  writeUnit(out, at, axis, from);
  const [x, y, z] = [out[at]!, out[at + 1]!, out[at + 2]!];
  // The global axis that the sleeve's axis leans on least, made square to it.
  const least = Math.min(Math.abs(x), Math.abs(y), Math.abs(z));
  const gx = Math.abs(x) === least ? 1 : 0;
  const gy = gx === 0 && Math.abs(y) === least ? 1 : 0;
  const gz = 1 - gx - gy;
  const along = gx * x + gy * y + gz * z;
  const [px, py, pz] = [gx - along * x, gy - along * y, gz - along * z];
  const length = Math.sqrt(px * px + py * py + pz * pz);
  out[at] = px / length;
  out[at + 1] = py / length;
  out[at + 2] = pz / length;
  out[at + 3] = y * out[at + 2]! - z * out[at + 1]!;
  out[at + 4] = z * out[at]! - x * out[at + 2]!;
  out[at + 5] = x * out[at + 1]! - y * out[at]!;
}

/**
 * The deformation rows of `rows.ts` in twofold numbers, so built that a motion of the whole frame as one rigid body
 * deforms nothing to 32 digits: a row's turns are the cross product of the very numbers in its shifts.
 */
import type { FrameInputs } from '../model/compiled-frame.ts';
import type { Vec3 } from '../model/frame-model.ts';
import { AXES } from './axes.ts';
import type { Bodies } from './bodies.ts';
import type { RowWriter } from './rows.ts';
import type { Pairs, Topology } from './topology.ts';
import { add, between, cross, divide, dot, negate, type Twofold, type Twofold3, twofold } from './twofold.ts';

/** A row over twelve motions: six of each end's body. */
export type ExactRow = readonly Twofold[];

const NONE: Twofold3 = [twofold(0), twofold(0), twofold(0)];

export interface ExactRows {
  member(index: number): readonly ExactRow[];
  spring(index: number): readonly ExactRow[];
  /** How far a member's chord turns about its z and about its y. */
  chords(member: number): readonly ExactRow[];
  /** Row c of contact c; rows C + 2 s and C + 2 s + 1 of sleeve s. */
  gap(row: number): ExactRow;
}

/** Rows from the places of the nodes and the axes, lengths and directions that `writer` wrote last. */
export function exactRows(topology: Topology, bodies: Bodies, inputs: FrameInputs, writer: RowWriter): ExactRows {
  const { members, springs, contacts, sleeves } = topology;
  const place = (node: number): Vec3 => vec3(inputs.nodesMm, node * 3);

  /** A shift at both ends (from: `from`, to: less that) and a turn at each, as a row over the bodies' unknowns. */
  function row(pairs: Pairs, i: number, shift: Twofold3, turnFrom: Twofold3, turnTo: Twofold3): ExactRow {
    const [a, b] = [pairs.from[i]!, pairs.to[i]!];
    const [bodyA, bodyB] = [bodies.of[a]!, b < 0 ? -1 : bodies.of[b]!];
    const halfA = half(a, map3(shift, negate), turnFrom);
    const halfB = half(b, shift, turnTo);
    if (bodyA !== bodyB) return [...project(bodyA, halfA), ...project(bodyB, halfB)];
    const folded = halfA.map((value, k) => add(value, halfB[k]!));
    return [...project(bodyA, folded), ...NONE, ...NONE];
  }

  function half(node: number, shift: Twofold3, turn: Twofold3): readonly Twofold[] {
    const root = node < 0 ? node : bodies.root[bodies.of[node]!]!;
    if (root === node) return [...shift, ...turn];
    const moment = cross(between(place(root), place(node)), shift);
    return [...shift, ...moment.map((value, k) => add(value, turn[k]!))];
  }

  function project(body: number, half6: readonly Twofold[]): readonly Twofold[] {
    const basis = writer.followers.get(body)?.basis;
    if (!basis) return half6;
    return half6.map((_, c) =>
      dot(
        half6,
        half6.map((__, k) => twofold(basis[k * 6 + c]!)),
      ),
    );
  }

  function member(m: number): readonly ExactRow[] {
    const along = between(place(members.from[m]!), place(members.to[m]!));
    const lengthMm = writer.lengthsMm[m]!;
    const [x, y, z] = [0, 3, 6].map((k) => map3(vec3(writer.axes, m * AXES + k), twofold));
    const slopeY = map3(vec3(writer.axes, m * AXES + 3), (value) => twofold((-2 * value) / lengthMm));
    const slopeZ = map3(vec3(writer.axes, m * AXES + 6), (value) => twofold((2 * value) / lengthMm));
    const chordY = map3(cross(slopeY, along), (value) => divide(value, 2));
    const chordZ = map3(cross(slopeZ, along), (value) => divide(value, 2));
    const difference = (axis: Twofold3) => row(members, m, NONE, map3(axis, negate), axis);
    return [
      row(
        members,
        m,
        map3(along, (value) => divide(value, lengthMm)),
        NONE,
        NONE,
      ),
      difference(x!),
      difference(z!),
      row(members, m, slopeY, chordY, chordY),
      difference(y!),
      row(members, m, slopeZ, chordZ, chordZ),
    ];
  }

  function spring(s: number): readonly ExactRow[] {
    const unit = (k: number): Twofold3 => map3([k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0], twofold);
    const shifts = [0, 1, 2].map((k) => row(springs, s, unit(k), NONE, NONE));
    const turns = [0, 1, 2].map((k) => row(springs, s, NONE, map3(unit(k), negate), unit(k)));
    return [...shifts, ...turns];
  }

  function chords(m: number): readonly ExactRow[] {
    const lengthMm = writer.lengthsMm[m]!;
    const [y, z] = [vec3(writer.axes, m * AXES + 3), vec3(writer.axes, m * AXES + 6)];
    return [
      row(
        members,
        m,
        map3(y, (value) => twofold(value / lengthMm)),
        NONE,
        NONE,
      ),
      row(
        members,
        m,
        map3(z, (value) => twofold(-value / lengthMm)),
        NONE,
        NONE,
      ),
    ];
  }

  function gap(index: number): ExactRow {
    const direction = map3(vec3(writer.gapDirections, index * 3), twofold);
    const sleeve = (index - contacts.names.length) >> 1;
    if (index < contacts.names.length) return row(contacts, index, direction, NONE, NONE);
    return row(sleeves, sleeve, direction, NONE, NONE);
  }

  return { member, spring, chords, gap };
}

function vec3(values: Float64Array, at: number): Vec3 {
  return [values[at]!, values[at + 1]!, values[at + 2]!];
}

function map3<A, B>([a, b, c]: readonly [A, A, A], f: (value: A) => B): readonly [B, B, B] {
  return [f(a), f(b), f(c)];
}

/** Bodies that contacts and sleeves tie to each other, and which of their motions the rows of these measure. */
import { ROW } from '../assemble/deformations.ts';
import type { Freedoms } from '../assemble/freedoms.ts';
import type { Pairs, Topology } from '../assemble/topology.ts';
import { SLEEVE_ROWS } from './gaps.ts';
import { PLACE } from './groups.ts';

/** A coefficient below this share of its row's largest is rounding: the row follows from those before. */
export const DEPENDENT = 1e-9;

export interface Cluster {
  /** Rows of contacts and sleeves. */
  readonly rows: readonly number[];
  /** Slots of its motions; the first `rank` are to be measured, the others hidden. */
  readonly slots: readonly number[];
  readonly rank: number;
}

/** 12 a row: the slots (6 a body) of its motions, -1 where both ends are on one body and the second half is empty. */
export function listRowSlots({ contacts, sleeves }: Topology, { bodies }: Freedoms): Int32Array {
  const rowOf = ({ from, to }: Pairs, i: number): number[] => {
    const [a, b] = [bodies.of[from[i]!]!, bodies.of[to[i]!]!];
    const motions = (body: number) => [0, 1, 2, 3, 4, 5].map((k) => body * 6 + k);
    return [...motions(a), ...(a === b ? Array<number>(6).fill(-1) : motions(b))];
  };
  return Int32Array.from([
    ...contacts.names.flatMap((_, c) => rowOf(contacts, c)),
    ...sleeves.names.flatMap((_, s) => Array.from({ length: SLEEVE_ROWS }, () => rowOf(sleeves, s)).flat()),
  ]);
}

/** Finds the clusters and gives their motions their places: measured or hidden. Late motions are left as they are. */
export function findClusters(
  topology: Topology,
  freedoms: Freedoms,
  rows: Float64Array,
  rowSlots: Int32Array,
  places: Uint8Array,
): Cluster[] {
  const felt = feltSlots(topology, freedoms);
  return groupRows(rowSlots).map((mine) => {
    const touched = mine.flatMap((row) => [...rowSlots.subarray(row * ROW, (row + 1) * ROW)]);
    const slots = [...new Set(touched)].filter((slot) => felt.has(slot) && places[slot] === PLACE.interior);
    const rank = Math.min(mine.length, slots.length);
    const measured = measuredSlots(mine, rows, rowSlots, slots);
    const rest = slots.filter((slot) => !measured.includes(slot));
    const ordered = [...measured, ...rest];
    ordered.forEach((slot, i) => {
      places[slot] = i < rank ? PLACE.gap : PLACE.hidden;
    });
    return { rows: mine, slots: ordered, rank };
  });
}

/** Rows that share a body, directly or through others. */
function groupRows(rowSlots: Int32Array): number[][] {
  const groupOf = new Map<number, number[]>();
  for (let row = 0; row < rowSlots.length / ROW; row++) {
    const bodies = [0, 6].map((k) => Math.floor(rowSlots[row * ROW + k]! / 6));
    const joined = [row, ...new Set(bodies.map((body) => groupOf.get(body) ?? []))].flat();
    for (const other of joined) {
      for (const k of [0, 6]) groupOf.set(Math.floor(rowSlots[other * ROW + k]! / 6), joined);
    }
  }
  return [...new Set(groupOf.values())].map((group) => group.sort((a, b) => a - b));
}

/** A node that follows, or is held at followers, feels all six motions of its body; another only its three shifts. */
function feltSlots({ contacts, sleeves }: Topology, { bodies, followers }: Freedoms): Set<number> {
  const slots = new Set<number>();
  for (const node of [...contacts.from, ...contacts.to, ...sleeves.from, ...sleeves.to]) {
    const body = bodies.of[node]!;
    const isPlain = bodies.root[body] === node && !followers.has(body);
    for (let k = 0; k < (isPlain ? 3 : 6); k++) slots.add(body * 6 + k);
  }
  return slots;
}

/** For each row that adds something new, the slot it takes hold of most: elimination with the largest pivot. */
function measuredSlots(
  mine: readonly number[],
  rows: Float64Array,
  rowSlots: Int32Array,
  slots: readonly number[],
): number[] {
  const measured: number[] = [];
  const reduced: Map<number, number>[] = [];
  for (const row of mine) {
    const over = new Map(slots.map((slot) => [slot, 0]));
    for (let k = row * ROW; k < (row + 1) * ROW; k++) {
      const slot = rowSlots[k]!;
      if (over.has(slot)) over.set(slot, over.get(slot)! + rows[k]!);
    }
    const scale = Math.max(0, ...[...over.values()].map(Math.abs));
    measured.forEach((pivot, i) => {
      const share = over.get(pivot)! / reduced[i]!.get(pivot)!;
      for (const [slot, value] of reduced[i]!) over.set(slot, slot === pivot ? 0 : over.get(slot)! - share * value);
    });
    const largest = [...over].reduce((best, one) => (Math.abs(one[1]) > Math.abs(best[1]) ? one : best), [-1, 0]);
    if (Math.abs(largest[1]) <= DEPENDENT * scale) continue;
    measured.push(largest[0]);
    reduced.push(over);
  }
  return measured;
}

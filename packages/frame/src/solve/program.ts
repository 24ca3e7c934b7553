/**
 * The plan of a factorisation, made once: which unknowns go in which order, where each figure of the stiffness lives,
 * and what each elimination step changes. Interior unknowns come in groups, each with a panel of rows: its own columns,
 * then those of the groups it is tied to. The rest, the interface, shares one square block at the end; its hidden
 * unknowns are the last step. Only the upper triangle is kept.
 */
import { InputError } from '@bonewright/fault';
import { MODES, ROW } from '../assemble/deformations.ts';
import { elementGroups, type Groups, groupUnknowns, type Layout, PLACE } from './groups.ts';
import { eliminationOrder } from './ordering.ts';

/** Upper-triangle pairs of an element's twelve motions. */
export const ELEMENT_PAIRS = 78;
/** A factor of more numbers would not fit in the memory we promise to stay under. */
const MOST_VALUES = 50_000_000;

export interface Program {
  /** Unknowns in order of elimination: interior, hidden, then those that are kept (gap, late). */
  readonly unknowns: number;
  readonly interior: number;
  readonly hidden: number;
  readonly gaps: number;
  /** 6 a body: its unknowns' numbers; where there is none, the number `unknowns`: a motion that is always 0. */
  readonly unknownOf: Int32Array;
  /**
   * A record for each interior group, and one for the hidden unknowns if there are any: size, first value, row length, first unknown, boundary width, number of blocks;
   * the boundary's unknowns; then for each boundary group a block: its rows, its column in the panel, row length of the
   * panel it changes, number of runs; and for each run: column in the panel, length, first value of the target.
   */
  readonly steps: Int32Array;
  /** Where each record begins. */
  readonly stepAt: Int32Array;
  /** Steps before that of the hidden unknowns. */
  readonly interiorSteps: number;
  /** Numbers in the factor; there is one more, to catch what has no place. */
  readonly values: number;
  /** First value of the interface's square block. */
  readonly interfaceAt: number;
  readonly elements: number;
  /** 12 an element. */
  readonly elementUnknowns: Int32Array;
  /** 78 an element: the value that each pair of its motions adds to. */
  readonly elementValues: Int32Array;
}

export const STEP_HEAD = 6;
export const BLOCK_HEAD = 4;
export const RUN = 3;

/** Lays the factorisation out. Throws InputError where it would not fit in memory. */
export function layOut(layout: Layout): Program {
  const groups = groupUnknowns(layout);
  const ties = elementGroups(layout, groups);
  const isInterface = groups.places.map((place) => place !== PLACE.interior);
  const { order, boundary } = eliminationOrder(groups.sizes, isInterface, ties);
  const panels = placePanels(groups, order, boundary);
  const unknownOf = numberUnknowns(layout, groups, panels);
  return {
    unknowns: panels.unknowns,
    interior: panels.interior,
    hidden: countUnknowns(groups, PLACE.hidden),
    gaps: countUnknowns(groups, PLACE.gap),
    unknownOf,
    ...writeSteps(order, panels, groups),
    interiorSteps: order.length,
    values: panels.values,
    interfaceAt: panels.interfaceAt,
    elements: layout.elementFrom.length,
    ...placeElements(layout, unknownOf, panels, groups),
  };
}

function countUnknowns({ sizes, places }: Groups, place: number): number {
  return sizes.reduce((sum, size, group) => sum + (places[group] === place ? size : 0), 0);
}

/** Where the rows and columns of each group are. */
interface Panels {
  readonly unknowns: number;
  readonly interior: number;
  readonly values: number;
  readonly interfaceAt: number;
  /** By group: its first unknown, the first value of its panel, the panel's row length. */
  readonly first: Int32Array;
  readonly base: Int32Array;
  readonly width: Int32Array;
  /** By group: the groups of its boundary in order of elimination; none for the interface. */
  readonly boundary: readonly (readonly number[])[];
  /** By group: another group -> its first column in the panel. */
  readonly column: readonly ReadonlyMap<number, number>[];
}

function placePanels(
  groups: Groups,
  order: readonly number[],
  boundaryOf: ReadonlyMap<number, readonly number[]>,
): Panels {
  const { sizes, places } = groups;
  const last = [PLACE.hidden, PLACE.gap, PLACE.late].flatMap((place) =>
    [...sizes.keys()].filter((group) => places[group] === place),
  );
  const first = new Int32Array(sizes.length);
  const total = (list: readonly number[]) => list.reduce((sum, group) => sum + sizes[group]!, 0);
  let unknowns = 0;
  for (const group of [...order, ...last]) {
    first[group] = unknowns;
    unknowns += sizes[group]!;
  }
  const interior = total(order);

  const base = new Int32Array(sizes.length);
  const width = new Int32Array(sizes.length);
  const boundary: (readonly number[])[] = sizes.map(() => []);
  const column: Map<number, number>[] = sizes.map(() => new Map());
  let values = 0;
  for (const group of order) {
    const tied = [...(boundaryOf.get(group) ?? [])].sort((a, b) => first[a]! - first[b]!);
    let at = 0;
    for (const other of [group, ...tied]) {
      column[group]!.set(other, at);
      at += sizes[other]!;
    }
    boundary[group] = tied;
    base[group] = values;
    width[group] = at;
    values += at * sizes[group]!;
  }
  const interfaceAt = values;
  for (const group of last) {
    for (const other of last) column[group]!.set(other, first[other]! - interior);
    width[group] = unknowns - interior;
    base[group] = values;
    values += width[group]! * sizes[group]!;
  }
  if (values > MOST_VALUES) {
    throw new InputError(
      `the frame of ${unknowns} unknowns needs more memory than allowed`,
      'nodes',
      'use fewer nodes',
    );
  }
  return { unknowns, interior, values, interfaceAt, first, base, width, boundary, column };
}

function numberUnknowns(layout: Layout, groups: Groups, panels: Panels): Int32Array {
  const unknownOf = new Int32Array(layout.places.length).fill(panels.unknowns);
  groups.slots.forEach((slots, group) => {
    slots.forEach((slot, place) => {
      unknownOf[slot] = panels.first[group]! + place;
    });
  });
  return unknownOf;
}

function writeSteps(order: readonly number[], panels: Panels, groups: Groups) {
  const { sizes } = groups;
  const steps: number[] = [];
  const stepAt = order.map((group) => {
    const at = steps.length;
    const tied = panels.boundary[group]!;
    const boundaryWidth = panels.width[group]! - sizes[group]!;
    steps.push(
      sizes[group]!,
      panels.base[group]!,
      panels.width[group]!,
      panels.first[group]!,
      boundaryWidth,
      tied.length,
    );
    for (const other of tied) for (let k = 0; k < sizes[other]!; k++) steps.push(panels.first[other]! + k);
    tied.forEach((row, i) => {
      const runs = runsOf(group, row, tied.slice(i), panels, sizes);
      steps.push(sizes[row]!, panels.column[group]!.get(row)!, panels.width[row]!, runs.length, ...runs.flat());
    });
    return at;
  });
  const hidden = countUnknowns(groups, PLACE.hidden);
  if (hidden > 0) {
    stepAt.push(steps.length);
    steps.push(...hiddenStep(panels, hidden));
  }
  return { steps: Int32Array.from(steps), stepAt: Int32Array.from(stepAt) };
}

/** The hidden unknowns are the first of the interface's block, all others their boundary. */
function hiddenStep({ unknowns, interior, interfaceAt }: Panels, hidden: number): number[] {
  const width = unknowns - interior;
  const kept = width - hidden;
  const boundary = Array.from({ length: kept }, (_, i) => interior + hidden + i);
  const block = [kept, hidden, width, 1, hidden, kept, interfaceAt + hidden * (width + 1)];
  return [hidden, interfaceAt, width, interior, kept, 1, ...boundary, ...block];
}

/** Stretches of columns that lie side by side both in the panel of `group` and in that of `row`. */
function runsOf(
  group: number,
  row: number,
  columns: readonly number[],
  panels: Panels,
  sizes: readonly number[],
): [number, number, number][] {
  const runs: [number, number, number][] = [];
  for (const other of columns) {
    const source = panels.column[group]!.get(other)!;
    const target = panels.base[row]! + panels.column[row]!.get(other)!;
    const previous = runs.at(-1);
    if (previous && previous[2] + previous[1] === target) previous[1] += sizes[other]!;
    else runs.push([source, sizes[other]!, target]);
  }
  return runs;
}

function placeElements(layout: Layout, unknownOf: Int32Array, panels: Panels, groups: Groups) {
  const groupOf = new Int32Array(panels.unknowns);
  groups.sizes.forEach((size, group) => {
    groupOf.fill(group, panels.first[group]!, panels.first[group]! + size);
  });
  const place = (a: number, b: number): number => {
    if (a === panels.unknowns || b === panels.unknowns) return panels.values;
    const [p, q] = [Math.min(a, b), Math.max(a, b)];
    const [row, col] = [groupOf[p]!, groupOf[q]!];
    const column = panels.column[row]!.get(col)! + q - panels.first[col]!;
    return panels.base[row]! + (p - panels.first[row]!) * panels.width[row]! + column;
  };
  const elements = layout.elementFrom.length;
  const elementUnknowns = new Int32Array(elements * 12).fill(panels.unknowns);
  const elementValues = new Int32Array(elements * ELEMENT_PAIRS);
  for (let element = 0; element < elements; element++) {
    const [from, to] = [layout.elementFrom[element]!, layout.elementTo[element]!];
    for (let k = 0; k < 6; k++) {
      elementUnknowns[element * 12 + k] = unknownOf[from * 6 + k]!;
      if (to >= 0 && to !== from) elementUnknowns[element * 12 + 6 + k] = unknownOf[to * 6 + k]!;
    }
    const mine = elementUnknowns.subarray(element * 12, element * 12 + 12);
    let pair = element * ELEMENT_PAIRS;
    for (let i = 0; i < 12; i++) for (let j = i; j < 12; j++) elementValues[pair++] = place(mine[i]!, mine[j]!);
  }
  return { elementUnknowns, elementValues };
}

/** Multiply-adds of assembling, eliminating, substituting back for `cases` load cases and taking the deformations. */
export function countMultiplyAdds({ steps, stepAt, elements }: Program, cases: number): number {
  let count = elements * MODES * (ELEMENT_PAIRS + ROW * cases);
  for (const at of stepAt) {
    for (let k = 0; k < steps[at]!; k++) {
      const left = steps[at + 2]! - k - 1;
      count += (left * (left + 1)) / 2 + left * cases;
    }
  }
  return count;
}

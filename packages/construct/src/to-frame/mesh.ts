/**
 * Which nodes a construct's frame has and what each stands for. Decided once, at the middle figures: samples of the
 * same construct change numbers only. Positions in mm along s.
 */
import { fragmentsOf, isthmus, sectionAt } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { Case, Construct } from '../model/case-file.ts';
import type { Figures } from '../model/figures.ts';
import { imTipMm } from './im-line.ts';
import type { Layout } from './layout.ts';
import { lengthOf, minus } from './vectors.ts';

export interface BoneNode {
  readonly name: string;
  readonly sMm: number;
}

export interface ColumnStop {
  /** Pin index, or `im` for a tied-in IM pin's end. */
  readonly what: number | 'im';
  readonly name: string;
  /** Pins that meet the column here: more than one where they cross in it. */
  readonly pins: readonly number[];
}

export interface Mesh {
  readonly proximal: readonly BoneNode[];
  readonly distal: readonly BoneNode[];
  /** Bone node of each pin; null for a pin in the open gap. */
  readonly pinNodes: readonly (string | null)[];
  /** Along each column, from its proximal end. */
  readonly columns: readonly (readonly ColumnStop[])[];
  /** Bone nodes beside the IM pin, its entry first and its tip last; empty without one. */
  readonly imSites: readonly BoneNode[];
}

export const PROXIMAL_FACE = 'F.proximal';
export const DISTAL_FACE = 'F.distal';

/** Nodes closer than this, as a share of the bone's length, are one. */
const SAME_PLACE = 1e-4;

/** Decides the nodes. */
export function meshOf(patientCase: Case, construct: Construct, figures: Figures, layout: Layout): Mesh {
  const { profile } = figures;
  const { proximal: near, distal: far } = fragmentsOf(profile.lengthMm, patientCase.fracture);
  const pins = layout.pins.map((pin) => (pin.fragment ? pin.crossing[0] : null));
  const crossings = pins.filter((s) => s !== null);
  const sites = construct.im && figures.im ? imPlaces(patientCase, figures, figures.im.diameterMm, crossings) : [];
  const places = [...crossings, ...sites];
  const same = SAME_PLACE * profile.lengthMm;
  const longest = 2 * Math.max(...sectionAt(profile, (near[1] + far[0]) / 2).outerMm);
  const proximal = boneNodes(near, places, same, longest, ['proximal', PROXIMAL_FACE], 'A');
  const distal = boneNodes(far, places, same, longest, [DISTAL_FACE, 'distal'], 'Z');
  const nodeAt = (s: number) => nearest(s <= near[1] ? proximal : distal, s);
  return {
    proximal,
    distal,
    pinNodes: pins.map((s) => (s === null ? null : nodeAt(s).name)),
    columns: columnStops(layout, figures, construct.im?.tiedIn ?? false),
    imSites: sites.map(nodeAt),
  };
}

/** Nodes of one fragment: its ends, the places in it, and enough between that no piece is longer than `longestMm`. */
function boneNodes(
  [from, to]: readonly [number, number],
  places: readonly number[],
  same: number,
  longestMm: number,
  [first, last]: readonly [string, string],
  letter: string,
): BoneNode[] {
  const inside = places.filter((s) => s > from + same && s < to - same).toSorted((a, b) => a - b);
  const keys = [from, ...inside.filter((s, i) => i === 0 || s - inside[i - 1]! > same), to];
  const all = keys.flatMap((s, i) => {
    const next = keys[i + 1];
    if (next === undefined) return [s];
    const pieces = Math.max(1, Math.ceil((next - s) / longestMm));
    return Array.from({ length: pieces }, (_, k) => s + ((next - s) * k) / pieces);
  });
  return all.map((sMm, i) => ({ sMm, name: i === 0 ? first : i === all.length - 1 ? last : `${letter}${i}` }));
}

const nearest = (nodes: readonly BoneNode[], s: number): BoneNode =>
  nodes.reduce((a, b) => (Math.abs(b.sMm - s) < Math.abs(a.sMm - s) ? b : a));

/**
 * Where pin and canal can touch: the canal's ends, both sides of the fracture, the isthmus, and between these so that
 * none lies further apart than the evidence says. A place beside a pin's hole moves to it.
 */
function imPlaces(patientCase: Case, figures: Figures, diameterMm: number, pins: readonly number[]): number[] {
  const { profile } = figures;
  const tip = imTipMm(patientCase, figures);
  const { proximal, distal } = fragmentsOf(profile.lengthMm, patientCase.fracture);
  const from = Math.min(patientCase.keepOut?.proximalMm ?? 0, proximal[1]);
  const narrow = isthmus(profile, from, tip).sMm;
  const inGap = narrow > proximal[1] && narrow < distal[0];
  const must = [0, from, proximal[1], distal[0], ...(inGap ? [] : [narrow]), tip].toSorted((a, b) => a - b);
  const spacing = Math.max(
    value('interface.canal.spacing') * diameterMm,
    (tip - from) / (value('interface.canal.sleeves') - must.length / 2),
  );
  const snap = spacing / 4;
  const filled = must.flatMap((s, i) => {
    const next = must[i + 1] ?? s;
    const acrossGap = s >= proximal[1] && next <= distal[0];
    const pieces = acrossGap ? 1 : Math.max(1, Math.round((next - s) / spacing));
    return Array.from({ length: pieces }, (_, k) => s + ((next - s) * k) / pieces);
  });
  const fixed = new Set([0, proximal[1], distal[0], tip]);
  const moved = filled.map((s) => (fixed.has(s) ? s : (pins.find((p) => Math.abs(p - s) < snap) ?? s)));
  const ordered = [...new Set(moved)].toSorted((a, b) => a - b);
  return ordered.filter((s, i) => i === 0 || fixed.has(s) || s - ordered[i - 1]! > snap);
}

/** Pins that meet the column closer together than this, as a share of its diameter, share a node. */
const SAME_STOP = 0.02;

function columnStops({ pins, columns }: Layout, figures: Figures, tiedIn: boolean): ColumnStop[][] {
  const near = Math.max(
    0,
    columns.findIndex((c) => c.side === 'near'),
  );
  return columns.map((_, c) => {
    const held = pins.filter((pin) => pin.fragment);
    const ordered = held.toSorted((a, b) => a.entries[c]!.axis[0] - b.entries[c]!.axis[0]);
    const same = SAME_STOP * figures.columns[c]!.diameterMm;
    const groups: number[][] = [];
    ordered.forEach((pin, i) => {
      const before = ordered[i - 1];
      const apart = before ? lengthOf(minus(pin.entries[c]!.axis, before.entries[c]!.axis)) : same;
      if (before && apart < same) groups.at(-1)!.push(pin.index);
      else groups.push([pin.index]);
    });
    const stops = groups.map((group) => ({ what: group[0]!, name: columnNode(c, group[0]!), pins: group }));
    const tied = tiedIn && c === near && stops.length > 0;
    return [...(tied ? [{ what: 'im' as const, name: columnNode(c, 'im'), pins: [] }] : []), ...stops];
  });
}

/** The node at which a pin meets a column. */
export function stopOfPin(mesh: Mesh, column: number, pin: number): string {
  const stop = mesh.columns[column]?.find((s) => s.pins.includes(pin));
  if (!stop) throw new Error(`pin ${pin} meets no stop of column ${column}`);
  return stop.name;
}

export const columnNode = (column: number, what: number | 'im'): string =>
  `C${column + 1}.${what === 'im' ? 'IM' : `P${what + 1}`}`;

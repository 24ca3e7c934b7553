/** Where a construct can fail, in words, and which member's end tells the force there. */

import { fragmentsOf } from '@bonewright/bone';
import type { Case, Construct } from '../model/case-file.ts';
import type { Figures } from '../model/figures.ts';
import { pieceName } from '../to-frame/bone-part.ts';
import { IM_ARM, imPieceName } from '../to-frame/im-part.ts';
import type { Layout } from '../to-frame/layout.ts';
import type { ColumnStop, Mesh } from '../to-frame/mesh.ts';
import { columnPieceName, freeName, insideName, jointName, pinName } from '../to-frame/pin-part.ts';

export const FROM = 0;
export const TO = 1;
export type End = typeof FROM | typeof TO;

interface At {
  readonly words: string;
  readonly member: string;
  readonly end: End;
}

export type Place =
  | (At & { readonly kind: 'pin'; readonly pin: number; readonly inBone: boolean })
  | (At & { readonly kind: 'hole'; readonly pin: number })
  | (At & { readonly kind: 'bearing'; readonly pin: number; readonly side: 'near' | 'far' })
  | (At & { readonly kind: 'slide'; readonly pin: number; readonly column: number })
  | (At & { readonly kind: 'column'; readonly column: number; readonly through: ColumnStop['what'] })
  | (At & { readonly kind: 'im'; readonly bent: boolean });

/** Every place of a construct; two ends of one place (bone either side of a hole) are two entries of the same words. */
export function placesOf(
  patientCase: Case,
  construct: Construct,
  figures: Figures,
  layout: Layout,
  mesh: Mesh,
): Place[] {
  return [
    ...layout.pins.flatMap((pin) => {
      const node = mesh.pinNodes[pin.index];
      return node ? pinPlaces(pin.index, construct, figures, mesh, node) : [];
    }),
    ...mesh.columns.flatMap((stops, c) => columnPlaces(stops, c, columnWord(c, figures))),
    ...imPlaces(patientCase, figures, mesh),
  ];
}

const columnWord = (column: number, { columns }: Figures): string =>
  columns.length === 1 ? 'the column' : `the ${columns[column]!.side} column`;

function pinPlaces(pin: number, construct: Construct, figures: Figures, mesh: Mesh, node: string): Place[] {
  const name = pinName(pin);
  const twoWalls = construct.pins[pin]!.cortices !== 1 || figures.columns.some((c) => c.side === 'far');
  const sides = twoWalls ? (['near', 'far'] as const) : (['near'] as const);
  const places: Place[] = figures.columns.flatMap((column, c) => {
    const member = freeName(pin, c);
    const where = columnWord(c, figures);
    return [
      { kind: 'pin', words: `${name} at the ${column.side} cortex`, member, end: FROM, pin, inBone: true },
      { kind: 'pin', words: `${name} where it enters ${where}`, member, end: TO, pin, inBone: false },
      { kind: 'slide', words: `${name} sliding in ${where}`, member, end: TO, pin, column: c },
    ];
  });
  if (twoWalls) {
    const member = insideName(pin);
    places.push(
      { kind: 'pin', words: `${name} at the far cortex`, member, end: FROM, pin, inBone: true },
      { kind: 'pin', words: `${name} at the near cortex`, member, end: TO, pin, inBone: true },
    );
  }
  for (const side of sides) {
    const words = `the bone under ${name} at the ${side} cortex`;
    places.push({ kind: 'bearing', words, member: jointName(pin, side), end: TO, pin, side });
  }
  return [...places, ...holePlaces(pin, mesh, node)];
}

/** The bone just before and just after the hole. */
function holePlaces(pin: number, mesh: Mesh, node: string): Place[] {
  const words = `the bone at ${pinName(pin)}`;
  return [mesh.proximal, mesh.distal].flatMap((fragment) => {
    const at = fragment.findIndex((n) => n.name === node);
    if (at < 0) return [];
    const before: Place[] = at > 0 ? [{ kind: 'hole', words, member: pieceName(node), end: TO, pin }] : [];
    const next = fragment[at + 1];
    return next ? [...before, { kind: 'hole', words, member: pieceName(next.name), end: FROM, pin }] : before;
  });
}

function columnPlaces(stops: readonly ColumnStop[], column: number, word: string): Place[] {
  return stops.flatMap((stop, i) => {
    const what = stop.what === 'im' ? 'the IM pin' : pinName(stop.what);
    const at = { kind: 'column', words: `${word} at ${what}`, column, through: stop.what } as const;
    const before: Place[] = i > 0 ? [{ ...at, member: columnPieceName(stop.name), end: TO }] : [];
    const next = stops[i + 1];
    return next ? [...before, { ...at, member: columnPieceName(next.name), end: FROM }] : before;
  });
}

function imPlaces(patientCase: Case, { im, profile }: Figures, mesh: Mesh): Place[] {
  if (!im) return [];
  const { middleMm } = fragmentsOf(profile.lengthMm, patientCase.fracture);
  const pieces = mesh.imSites.slice(1).flatMap((site, i): Place[] => {
    const from = mesh.imSites[i]!;
    const across = from.sMm <= middleMm && site.sMm >= middleMm;
    const words = (s: number) => (across ? 'the IM pin at the fracture' : `the IM pin at ${s.toFixed(0)} mm`);
    const member = imPieceName(i + 1);
    return [
      { kind: 'im', words: words(from.sMm), member, end: FROM, bent: false },
      { kind: 'im', words: words(site.sMm), member, end: TO, bent: false },
    ];
  });
  const tied = mesh.columns.some((stops) => stops.some((s) => s.what === 'im'));
  if (!tied) return pieces;
  return [
    ...pieces,
    { kind: 'im', words: 'the IM pin at its bend', member: IM_ARM, end: FROM, bent: true },
    { kind: 'im', words: 'the IM pin where it enters the column', member: IM_ARM, end: TO, bent: false },
  ];
}

/**
 * Where the parts of a construct lie in space: pins through their walls, columns through the pins' ends.
 * Points are [s distal, medial, cranial] in mm. A pin's line crosses the bone's axis at its `sMm`; the wall it meets
 * lies R tan(tilt) further along. A column's height is what its clearance asks at each pin; its axis is the straight
 * line that suits those heights best, unless a pin would miss it: then it runs from pin to pin.
 */
import { type FragmentName, fragmentAt, fragmentsOf, sectionAt, type Wall, wallAt } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { Vec3 } from '@bonewright/frame';
import type { Case, Construct } from '../model/case-file.ts';
import type { Figures } from '../model/figures.ts';
import { columnAxis, type PinEntry, type RodEnd, squareEnd } from './column-axis.ts';
import { imLine } from './im-line.ts';
import { meanAboutDeg, outward, plus } from './vectors.ts';

export interface PinLayout {
  readonly index: number;
  /** Null in the open gap: it holds nothing and is left out of the frame. */
  readonly fragment: FragmentName | null;
  readonly direction: Vec3;
  /** On the bone's axis. */
  readonly crossing: Vec3;
  readonly near: Wall;
  readonly far: Wall;
  /** Distances along the pin from its crossing. */
  readonly nearOuterMm: number;
  readonly nearMiddleMm: number;
  readonly farMiddleMm: number;
  readonly farOuterMm: number;
  readonly cortices: 1 | 2;
  /** One for each column, in the order of the columns. */
  readonly entries: readonly PinEntry[];
}

export interface Layout {
  readonly pins: readonly PinLayout[];
  /** Direction of the frame's plane about the bone. */
  readonly aboutDeg: number;
  readonly columns: readonly ColumnLayout[];
  /** The bent end of a tied-in IM pin, from the bend to the first near column. */
  readonly imBend: RodEnd | null;
}

export interface ColumnLayout {
  readonly side: 'near' | 'far';
  /** Along s, its overhang and what a tied-in IM pin asks for included. */
  readonly fromMm: number;
  readonly toMm: number;
  /** Its axis beside the bend of a tied-in IM pin. */
  readonly tie: Vec3 | null;
  /** False where it is bent from pin to pin. */
  readonly isStraight: boolean;
}

/** Depth of soft tissue over the near wall, linear between the places given; 0 where none was. */
export function tissueAt({ softTissueMm = [] }: Case, sMm: number): number {
  const after = softTissueMm.find((t) => t.sMm >= sMm) ?? softTissueMm.at(-1);
  const before = softTissueMm.findLast((t) => t.sMm <= sMm) ?? after;
  if (!before || !after) return 0;
  const t = after.sMm > before.sMm ? (sMm - before.sMm) / (after.sMm - before.sMm) : 0;
  return before.depthMm + (after.depthMm - before.depthMm) * t;
}

/** Lays a construct out at those figures. */
export function layOut(patientCase: Case, construct: Construct, figures: Figures): Layout {
  const bare = construct.pins.map((pin, index) => throughBone(patientCase, pin, index, figures));
  const aboutDeg = meanAboutDeg(construct.pins.map((p) => p.aboutDeg));
  const axes = figures.columns.map((column) => {
    const sense = column.side === 'far' ? -1 : 1;
    const wanted = bare.map((pin, i) => {
      const outer = sense > 0 ? pin.nearOuterMm : -pin.farOuterMm;
      const slope = Math.hypot(pin.direction[1], pin.direction[2]);
      const tissue = tissueAt(patientCase, pin.crossing[0] + sense * outer * pin.direction[0]);
      return outer + (tissue + column.clearanceMm + column.diameterMm / 2) / slope + (figures.pins[i]?.freeByMm ?? 0);
    });
    return columnAxis(bare, figures, column, wanted, aboutDeg);
  });
  const pins = bare.map((pin, i) => ({ ...pin, entries: axes.map((axis) => axis.entries[i]!) }));
  const bend = bendAt(patientCase, construct, figures);
  const tied = bend ? figures.columns.findIndex((c) => c.side === 'near') : -1;
  const columns = figures.columns.map((column, c) => {
    const tie = bend && c === tied ? axes[c]!.at(bend[0]) : null;
    const stops = [...pins.map((pin) => pin.entries[c]!.axis[0]), ...(tie ? [tie[0]] : [])];
    const overhang = column.diameterMm * value('column.overhang');
    const { isStraight } = axes[c]!;
    return {
      side: column.side,
      tie,
      isStraight,
      fromMm: Math.min(...stops) - overhang,
      toMm: Math.max(...stops) + overhang,
    };
  });
  const tie = columns[tied]?.tie;
  const imBend = bend && tie && figures.im ? squareEnd(bend, tie, figures.im, figures.columns[tied]!) : null;
  return { pins, aboutDeg, columns, imBend };
}

/** Where a tied-in IM pin is bent over, outside the bone's proximal end. */
function bendAt(patientCase: Case, construct: Construct, figures: Figures): Vec3 | null {
  if (!figures.im || !construct.im?.tiedIn) return null;
  const out = -value('interface.im.bend-distance') * figures.im.diameterMm;
  const [y, z] = imLine(patientCase, figures).at(out);
  return [out, y, z];
}

function throughBone(patientCase: Case, pin: Construct['pins'][number], index: number, { profile }: Figures) {
  const { sMm, aboutDeg, tiltDeg } = pin;
  const direction = outward(aboutDeg, tiltDeg);
  const slope = Math.hypot(direction[1], direction[2]);
  const here = sectionAt(profile, sMm);
  const lean = (wallAt(here, aboutDeg).outerRadiusMm * direction[0]) / slope;
  const near = wallAt(sectionAt(profile, sMm + lean), aboutDeg);
  const far = wallAt(sectionAt(profile, sMm - lean), aboutDeg);
  const crossing: Vec3 = [sMm, here.offsetMm[0], here.offsetMm[1]];
  return {
    index,
    fragment: fragmentAt(fragmentsOf(profile.lengthMm, patientCase.fracture), sMm),
    direction,
    crossing,
    near,
    far,
    nearOuterMm: near.outerRadiusMm / slope,
    nearMiddleMm: near.midRadiusMm / slope,
    farMiddleMm: -far.midRadiusMm / slope,
    farOuterMm: -far.outerRadiusMm / slope,
    cortices: pin.cortices ?? 2,
  };
}

export const alongPin = (pin: { readonly crossing: Vec3; readonly direction: Vec3 }, mm: number): Vec3 =>
  plus(pin.crossing, pin.direction, mm);

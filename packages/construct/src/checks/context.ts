/**
 * What the checks look at: the case and a construct, its pins laid out on the bone, its drawer entries found.
 * Lengths in mm along the bone from its proximal end; aboutDeg 0 is medial, +90 cranial.
 */
import {
  type BoreClass,
  type FragmentName,
  type Fragments,
  fragmentsOf,
  isthmus,
  type Profile,
  sectionAt,
  widthAcross,
} from '@bonewright/bone';
import { classOf } from '../loads/species.ts';
import type { Case, Construct, DrawerColumn, DrawerImPin, DrawerPin } from '../model/case-file.ts';
import { columnsOf, type Figures, found } from '../model/figures.ts';
import { imTipMm } from '../to-frame/im-line.ts';
import { alongPin, type Layout, type PinLayout, tissueAt } from '../to-frame/layout.ts';

export interface CheckedPin {
  readonly index: number;
  readonly drawer: DrawerPin;
  readonly sMm: number;
  readonly tiltDeg: number;
  readonly aboutDeg: number;
  /** Where its middle crosses the two outer walls, the lesser first. */
  readonly crossesMm: readonly [number, number];
  /** Bone width seen square to the pin: what its hole weakens. */
  readonly boneWidthMm: number;
  /** Null in the open gap. */
  readonly fragment: FragmentName | null;
}

export interface CheckedColumn {
  readonly drawer: DrawerColumn;
  /** Skin to the column's near surface at the pin where they are closest. */
  readonly clearanceMm: number;
  readonly side: 'near' | 'far';
  readonly massG: number;
  readonly youngMPa: number;
}

/** What only the laid-out frame can tell. */
export interface FrameFacts {
  readonly figures: Figures;
  readonly layout: Layout;
  /** In the order of the construct's columns. */
  readonly columnMassesG: readonly number[];
  /** Pins, IM pin and columns together. */
  readonly massG: number;
  /** Of the axial load with free ends; null where there is no gap, left out before anything was solved. */
  readonly gapStrainPercent?: number | null;
}

export interface CheckContext {
  readonly case: Case;
  readonly profile: Profile;
  readonly boreClass: BoreClass;
  readonly fragments: Fragments;
  readonly pins: readonly CheckedPin[];
  readonly im: CheckedIm | null;
  readonly columns: readonly CheckedColumn[];
  readonly massG: number;
  readonly gapStrainPercent?: number | null;
}

export interface CheckedIm {
  readonly drawer: DrawerImPin;
  readonly tiedIn: boolean;
  /** Along its way. */
  readonly narrowestCanalMm: number;
}

/** Brings a construct before the checks. The drawer holds what it names: `checkConstruct` has seen to that. */
export function checkContext(patientCase: Case, construct: Construct, facts: FrameFacts): CheckContext {
  const { drawer, bone, fracture } = patientCase;
  const { figures, layout, massG, gapStrainPercent } = facts;
  return {
    case: patientCase,
    profile: figures.profile,
    boreClass: classOf(patientCase),
    fragments: fragmentsOf(bone.lengthMm, fracture),
    pins: layout.pins.map((laid, i) => ({
      ...construct.pins[i]!,
      ...checkedPin(patientCase, construct, laid, figures),
    })),
    im: checkedIm(patientCase, construct, figures),
    columns: columnsOf(construct).map((column, i) => ({
      drawer: found(drawer.columns, column.drawerId),
      clearanceMm: leastClearance(patientCase, layout, i, column.clearanceMm),
      side: column.side ?? 'near',
      massG: facts.columnMassesG[i] ?? 0,
      youngMPa: figures.columns[i]!.youngMPa,
    })),
    massG,
    ...(gapStrainPercent === undefined ? {} : { gapStrainPercent }),
  };
}

function checkedPin(patientCase: Case, construct: Construct, laid: PinLayout, { profile }: Figures) {
  const { index, fragment, crossing } = laid;
  const { drawerId, aboutDeg } = construct.pins[index]!;
  const walls = [alongPin(laid, laid.nearOuterMm)[0], alongPin(laid, laid.farOuterMm)[0]];
  return {
    index,
    drawer: found(patientCase.drawer.pins, drawerId),
    crossesMm: [Math.min(...walls), Math.max(...walls)] as const,
    boneWidthMm: widthAcross(sectionAt(profile, crossing[0]), aboutDeg),
    fragment,
  };
}

function checkedIm(patientCase: Case, { im }: Construct, figures: Figures): CheckedIm | null {
  if (!im) return null;
  const { canalMm } = isthmus(figures.profile, 0, imTipMm(patientCase, figures));
  return { drawer: found(patientCase.drawer.imPins, im.drawerId), tiedIn: im.tiedIn, narrowestCanalMm: canalMm };
}

/** A straight column over a curved skin comes closer at some pins than its mean clearance. */
function leastClearance(patientCase: Case, { pins }: Layout, column: number, plannedMm: number): number {
  const atPins = pins.map((pin) => {
    const { surfaceMm } = pin.entries[column]!;
    const outerMm = surfaceMm < 0 ? pin.farOuterMm : pin.nearOuterMm;
    const square = Math.hypot(pin.direction[1], pin.direction[2]);
    return Math.abs(surfaceMm - outerMm) * square - tissueAt(patientCase, alongPin(pin, outerMm)[0]);
  });
  return Math.min(plannedMm, ...atPins);
}

export const FRAGMENTS: readonly FragmentName[] = ['proximal', 'distal'];

/** The pins of a fragment in order along the bone. */
export function pinsOf({ pins }: CheckContext, fragment: FragmentName): CheckedPin[] {
  return pins.filter((pin) => pin.fragment === fragment).toSorted((a, b) => a.sMm - b.sMm);
}

/** Distance in mm from the pin's middle to a stretch, at the nearer of its walls; 0 inside. */
export function distanceTo({ crossesMm: [low, high] }: CheckedPin, fromMm: number, toMm: number): number {
  return Math.max(0, fromMm - high, low - toMm);
}

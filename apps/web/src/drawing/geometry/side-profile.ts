/**
 * The bone cut lengthwise in the plane of its frame, as flat outlines.
 * Points are [s, h] in mm: s along the bone, h towards the column, 0 on the line between the bone's ends.
 */
import { fragmentsOf } from '@bonewright/bone';
import { type Case, tissueAt } from '@bonewright/construct';
import type { Point3 } from './placement.ts';
import { direction, radiusAlong, type Section, sectionAt } from './section.ts';

export type Point2 = readonly [number, number];

export interface FragmentOutline {
  readonly outline: readonly Point2[];
  /** Canal walls where a canal was measured: upper and lower line of each stretch. */
  readonly canal: readonly (readonly [readonly Point2[], readonly Point2[]])[];
  /** Outlines of the stretches without a measured canal. */
  readonly solid: readonly (readonly Point2[])[];
  /** The broken face, from the upper wall to the lower. */
  readonly face: readonly Point2[];
}

export interface SideProfile {
  readonly fragments: readonly FragmentOutline[];
  readonly skin: readonly Point2[];
}

const STEP_MM = 0.5;
const TEETH = 4;
const TOOTH_MM = 0.35;

interface Slice extends Section {
  readonly sMm: number;
  readonly axis: number;
  readonly wall: number;
  readonly canal: number | null;
}

/** Projects a point of space into the frame's plane. */
export function inPlane([s, medial, cranial]: Point3, aboutDeg: number): Point2 {
  const [c, d] = direction(aboutDeg);
  return [s, medial * c + cranial * d];
}

export function sideProfile(patientCase: Case, aboutDeg: number): SideProfile {
  const { fracture, bone } = patientCase;
  const slice = slicer(patientCase, aboutDeg);
  const {
    proximal: [, end],
    distal: [start],
    middleMm,
  } = fragmentsOf(bone.lengthMm, fracture);
  const lean = fracture.comminuted ? 0 : leanOf(patientCase, slice(middleMm).wall);
  const proximalFace = face(slice, end, lean);
  const distalFace = face(slice, start, lean);
  const proximal = slices(slice, 0, proximalFace.low);
  const distal = slices(slice, distalFace.high, bone.lengthMm);
  return {
    fragments: [fragment(proximal, proximalFace.line, 'after'), fragment(distal, distalFace.line, 'before')],
    skin: patientCase.softTissueMm?.length ? skinLine(patientCase, slice) : [],
  };
}

function slicer(patientCase: Case, aboutDeg: number): (sMm: number) => Slice {
  const [c, d] = direction(aboutDeg);
  return (sMm) => {
    const section = sectionAt(patientCase.bone.stations, sMm);
    return {
      ...section,
      sMm,
      axis: section.offset[0] * c + section.offset[1] * d,
      wall: radiusAlong(section.outerMm, aboutDeg),
      canal: section.canalMm && radiusAlong(section.canalMm, aboutDeg),
    };
  };
}

/** Half the stretch along s that an oblique line takes from wall to wall. */
export function leanOf({ fracture }: Case, wall: number): number {
  const stretch = Math.max(0, fracture.toMm - fracture.fromMm - fracture.gapMm) / 2;
  return Math.min(stretch, wall * Math.tan((fracture.obliquityDeg * Math.PI) / 180));
}

interface Face {
  readonly line: readonly Point2[];
  readonly low: number;
  readonly high: number;
}

function face(slice: (s: number) => Slice, sMm: number, lean: number): Face {
  const { axis, wall } = slice(sMm);
  const line = Array.from({ length: TEETH * 2 + 1 }, (_, i): Point2 => {
    const t = 1 - i / TEETH;
    const tooth = i % 2 === 0 ? 0 : i % 4 === 1 ? TOOTH_MM : -TOOTH_MM;
    return [sMm - t * lean + tooth, axis + t * wall];
  });
  return { line, low: sMm - lean, high: sMm + lean };
}

function slices(slice: (s: number) => Slice, from: number, to: number): Slice[] {
  const count = Math.max(1, Math.ceil((to - from) / STEP_MM));
  return Array.from({ length: count + 1 }, (_, i) => slice(from + ((to - from) * i) / count));
}

function fragment(along: readonly Slice[], faceLine: readonly Point2[], where: 'before' | 'after'): FragmentOutline {
  const upper = along.map((p): Point2 => [p.sMm, p.axis + p.wall]);
  const lower = along.map((p): Point2 => [p.sMm, p.axis - p.wall]);
  const outline =
    where === 'after'
      ? [...upper, ...faceLine, ...lower.toReversed()]
      : [...faceLine.toReversed(), ...upper, ...lower.toReversed()];
  return {
    outline,
    face: faceLine,
    canal: runs(along, (p) => p.canal !== null).map((run) => canalLines(run)),
    solid: runs(along, (p) => p.canal === null).map((run) => [
      ...run.map((p): Point2 => [p.sMm, p.axis + p.wall]),
      ...run.toReversed().map((p): Point2 => [p.sMm, p.axis - p.wall]),
    ]),
  };
}

function canalLines(run: readonly Slice[]): readonly [readonly Point2[], readonly Point2[]] {
  return [
    run.map((p): Point2 => [p.sMm, p.axis + (p.canal ?? 0)]),
    run.map((p): Point2 => [p.sMm, p.axis - (p.canal ?? 0)]),
  ];
}

/** Neighbouring slices that pass, together; runs of one slice are dropped. */
function runs(along: readonly Slice[], passes: (slice: Slice) => boolean): Slice[][] {
  const found: Slice[][] = [];
  let open: Slice[] = [];
  for (const slice of along) {
    if (passes(slice)) open.push(slice);
    else {
      found.push(open);
      open = [];
    }
  }
  found.push(open);
  return found.filter((run) => run.length > 1);
}

function skinLine(patientCase: Case, slice: (s: number) => Slice): Point2[] {
  return slices(slice, 0, patientCase.bone.lengthMm).map((p) => [
    p.sMm,
    p.axis + p.wall + tissueAt(patientCase, p.sMm),
  ]);
}

/** How a hand finds a pin's place and its depth: distances from two landmarks, and how far in it goes. */
import { value } from '@bonewright/evidence';
import type { Case, Construct } from '../model/case-file.ts';
import { nominalFigures } from '../model/figures.ts';
import { layOut, tissueAt } from '../to-frame/layout.ts';
import { cutLengthMm } from '../to-frame/masses.ts';

export interface Distance {
  readonly from: 'proximal end' | 'distal end' | 'pin';
  /** Index of that pin in the construct; absent for an end of the bone. */
  readonly index?: number;
  readonly mm: number;
}

export interface FoundAt {
  /** The nearer end of the bone, then the nearest pin that is in, else the other end. */
  readonly landmarks: readonly [Distance, Distance];
  /** From the near wall's outer face, along the pin, to where its tip should stand. */
  readonly pastNearWallMm: number;
  /** The same from the skin; null where no depth of soft tissue was given. */
  readonly pastSkinMm: number | null;
  /** Whole length to cut. */
  readonly cutLengthMm: number;
  /** Of the part inside the bone: the core of a threaded pin. */
  readonly coreMm: number;
  /** A pilot hole so wide. */
  readonly pilotMm: number;
}

/** Where one pin of a construct is found; `inAlready` are indices of pins that stand. */
export function findPin(patientCase: Case, construct: Construct, index: number, inAlready: readonly number[]): FoundAt {
  const figures = nominalFigures(patientCase, construct);
  const pin = layOut(patientCase, construct, figures).pins[index]!;
  const { coreMm } = figures.pins[index]!;
  const proud = value('interface.pin.proud');
  const tip = pin.cortices === 1 ? pin.nearMiddleMm : pin.farOuterMm;
  const pastNearWallMm = pin.nearOuterMm - (tip - proud);
  const tissue = tissueAt(patientCase, pin.crossing[0] + pin.nearOuterMm * pin.direction[0]);
  const slope = Math.hypot(pin.direction[1], pin.direction[2]);
  return {
    landmarks: landmarksOf(patientCase, construct, index, inAlready),
    pastNearWallMm,
    pastSkinMm: patientCase.softTissueMm?.length ? pastNearWallMm + tissue / slope : null,
    cutLengthMm: cutLengthMm(pin, figures),
    coreMm,
    pilotMm: coreMm - value('rule.pilot.under-core'),
  };
}

function landmarksOf(
  { bone }: Case,
  { pins }: Construct,
  index: number,
  inAlready: readonly number[],
): readonly [Distance, Distance] {
  const { sMm } = pins[index]!;
  const ends: readonly [Distance, Distance] = [
    { from: 'proximal end', mm: sMm },
    { from: 'distal end', mm: bone.lengthMm - sMm },
  ];
  const [nearer, other] = ends[0].mm <= ends[1].mm ? ends : [ends[1], ends[0]];
  const neighbours = inAlready
    .filter((i) => i !== index)
    .map((i): Distance => ({ from: 'pin', index: i, mm: Math.abs(pins[i]!.sMm - sMm) }))
    .toSorted((a, b) => a.mm - b.mm);
  return [nearer, neighbours[0] ?? other];
}

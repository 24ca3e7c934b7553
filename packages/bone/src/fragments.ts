/** What a fracture leaves of a bone: two fragments, and between them an open gap, along s in mm. */

export interface Fracture {
  readonly fromMm: number;
  readonly toMm: number;
  readonly gapMm: number;
  readonly obliquityDeg: number;
  readonly comminuted: boolean;
}

export interface Fragments {
  readonly proximal: readonly [fromMm: number, toMm: number];
  readonly distal: readonly [fromMm: number, toMm: number];
  /** Open length along the axis: the gap, or the whole broken stretch where nothing in it carries load. */
  readonly openMm: number;
  readonly middleMm: number;
  /** Whether the two faces can meet: never across pieces that carry nothing. */
  readonly facesMeet: boolean;
}

/** The gap lies in the middle of the broken stretch; with comminution nothing in the stretch carries load. */
export function fragmentsOf(lengthMm: number, fracture: Fracture): Fragments {
  const { fromMm, toMm, gapMm, comminuted } = fracture;
  const middleMm = (fromMm + toMm) / 2;
  const openMm = comminuted ? toMm - fromMm : gapMm;
  return {
    proximal: [0, middleMm - openMm / 2],
    distal: [middleMm + openMm / 2, lengthMm],
    openMm,
    middleMm,
    facesMeet: !comminuted,
  };
}

export type FragmentName = 'proximal' | 'distal';

/** The fragment in which `sMm` lies; null in the open gap. */
export function fragmentAt(fragments: Fragments, sMm: number): FragmentName | null {
  if (sMm <= fragments.proximal[1]) return 'proximal';
  return sMm >= fragments.distal[0] ? 'distal' : null;
}

/** A calibration as typed, one field a text, and the one that can be recorded when the fields are whole. */
import type { Calibration } from '@bonewright/film';
import { readNumber } from '../../form/read-number.ts';
import { type MaybePixel, readPixel, readPixels } from './pixel.ts';

export type CalibrationKind = Calibration['kind'];

export interface CalibrationDraft {
  readonly kind: CalibrationKind;
  /** The rough place of the ball. */
  readonly near: MaybePixel;
  /** The edges of the implant. */
  readonly across: readonly [MaybePixel, MaybePixel];
  readonly diameterMm: string;
  readonly sourceToDetectorMm: string;
  readonly ballToDetectorMm: string;
  readonly objectToDetectorMm: string;
  readonly detectorPitchMm: string;
  readonly mmPerPixel: string;
  readonly sdPercent: string;
}

export type CalibrationField = Exclude<keyof CalibrationDraft, 'kind' | 'near' | 'across'>;

const EMPTY: CalibrationDraft = {
  kind: 'ball',
  near: null,
  across: [null, null],
  diameterMm: '',
  sourceToDetectorMm: '',
  ballToDetectorMm: '',
  objectToDetectorMm: '',
  detectorPitchMm: '',
  mmPerPixel: '',
  sdPercent: '',
};

const KINDS: readonly CalibrationKind[] = ['ball', 'implant', 'scale', 'geometry'];

/** From a recorded calibration or an unfinished one; anything else counts as empty. */
export function calibrationDraft(kept: unknown): CalibrationDraft {
  if (typeof kept !== 'object' || kept === null) return EMPTY;
  const said = new Map<string, unknown>(Object.entries(kept));
  const texts = [...said].flatMap(([key, value]) =>
    key in EMPTY && (typeof value === 'number' || typeof value === 'string') ? [[key, String(value)] as const] : [],
  );
  const kind = KINDS.find((known) => known === said.get('kind')) ?? EMPTY.kind;
  const [a = null, b = null] = readPixels(said.get('across'), 2);
  return { ...EMPTY, ...Object.fromEntries(texts), kind, near: readPixel(said.get('near')), across: [a, b] };
}

/** Null while a field that this kind needs is missing or wrong. */
export function calibrationOf(draft: CalibrationDraft): Calibration | null {
  const n = (field: CalibrationField): number | null => readNumber(draft[field]);
  const more = (field: CalibrationField, from = 0) => {
    const value = n(field);
    return value !== null && value >= from ? { [field]: value } : {};
  };
  switch (draft.kind) {
    case 'ball': {
      const diameterMm = n('diameterMm');
      if (!draft.near || diameterMm === null || diameterMm <= 0) return null;
      const heights = { ...more('sourceToDetectorMm', 1), ...more('ballToDetectorMm'), ...more('objectToDetectorMm') };
      return { kind: 'ball', diameterMm, near: draft.near, ...heights };
    }
    case 'implant': {
      const diameterMm = n('diameterMm');
      const [a, b] = draft.across;
      return a && b && diameterMm !== null && diameterMm > 0 ? { kind: 'implant', diameterMm, across: [a, b] } : null;
    }
    case 'scale': {
      const mmPerPixel = n('mmPerPixel');
      return mmPerPixel !== null && mmPerPixel > 0 ? { kind: 'scale', mmPerPixel, ...more('sdPercent') } : null;
    }
    case 'geometry':
      return geometryOf(n('sourceToDetectorMm'), n('objectToDetectorMm'), n('detectorPitchMm'));
  }
}

function geometryOf(
  sourceToDetectorMm: number | null,
  objectToDetectorMm: number | null,
  detectorPitchMm: number | null,
): Calibration | null {
  if (sourceToDetectorMm === null || objectToDetectorMm === null || detectorPitchMm === null) return null;
  const isPossible = objectToDetectorMm >= 0 && sourceToDetectorMm > objectToDetectorMm && detectorPitchMm > 0;
  return isPossible ? { kind: 'geometry', sourceToDetectorMm, objectToDetectorMm, detectorPitchMm } : null;
}

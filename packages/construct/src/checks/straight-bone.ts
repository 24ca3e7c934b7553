/** For tests: a straight round bone, 60 mm long, 5 mm wide with a 3 mm canal, broken in the middle; four pins of 1 mm. */
import type { Case, CaseFile, Construct } from '../model/case-file.ts';
import { readCase } from '../read-case.ts';
import { frameFacts } from '../to-frame/masses.ts';
import { checkContext, runChecks } from './index.ts';

export const STRAIGHT: CaseFile = {
  patient: { species: 'red squirrel', massG: 310, ageClass: 'adult' },
  bone: {
    name: 'tibia',
    lengthMm: 60,
    stations: [0, 20, 40, 60].map((sMm) => ({ sMm, outerMm: [5, 5], canalMm: [3, 3] })),
  },
  fracture: { fromMm: 29, toMm: 31, gapMm: 0.5 },
  keepOut: { proximalMm: 5, distalMm: 5 },
  corridors: [{ fromMm: 0, toMm: 60, aboutDeg: [-30, 30] }],
  softTissueMm: [{ sMm: 0, depthMm: 2 }],
  drawer: {
    pins: [
      { id: 'thin', diameterMm: 0.8, kind: 'smooth', material: 'steel-cold-worked', count: 8 },
      { id: 'pin', diameterMm: 1, kind: 'smooth', material: 'steel-cold-worked', count: 8 },
    ],
    imPins: [{ id: 'im', diameterMm: 1, material: 'steel-cold-worked', count: 2 }],
    columns: [{ id: 'putty', material: 'epoxy-putty', diameterMm: 7 }],
  },
};

export const FOUR_PINS: Construct = {
  im: null,
  pins: [10, 23, 37, 50].map((sMm) => ({ drawerId: 'pin', sMm, tiltDeg: 0, aboutDeg: 0 })),
  column: { drawerId: 'putty', clearanceMm: 4 },
  grip: 'usual',
};

export const straightCase = (changes: Partial<CaseFile> = {}): Case => readCase({ ...STRAIGHT, ...changes });

/** All checks of a construct of that bone. */
export function checksOf(construct: Construct, patientCase: Case = straightCase()) {
  return runChecks(checkContext(patientCase, construct, frameFacts(patientCase, construct)));
}

/** The check of that id, of that pin (from 1) where one is named. */
export function checkOf(id: string, construct: Construct, patientCase: Case = straightCase(), pin?: number) {
  const found = checksOf(construct, patientCase).find((check) => check.id === id && (pin ?? check.pin) === check.pin);
  if (!found) throw new Error(`no check ${id}`);
  return found;
}

/** The construct with one pin changed, numbered from 1. */
export const withPin = (
  pin: number,
  change: Partial<Construct['pins'][number]>,
  from: Construct = FOUR_PINS,
): Construct => ({
  ...from,
  pins: from.pins.map((old, i) => (i === pin - 1 ? { ...old, ...change } : old)),
});

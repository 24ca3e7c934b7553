import { describe, expect, test } from 'vitest';
import { fatigueStress, nominalFigures } from '../model/figures.ts';
import { materialOf } from '../model/materials.ts';
import { straightBone } from '../straight-bone.ts';
import { strengthAt } from './judge.ts';
import type { Place } from './places.ts';

const patientCase = straightBone({
  lengthMm: 60,
  outerMm: 6,
  canalMm: 4,
  boneYoungMPa: 12_000,
  gapMm: 1,
  pinMm: 1.2,
  pins: [[15], [45]],
  columnMm: 8,
  columnMaterial: 'acrylic',
  clearanceMm: 5,
});
const figures = nominalFigures(patientCase, patientCase.construct!);
const at = { words: '', member: '', end: 0 } as const;
const pin: Place = { ...at, kind: 'pin', pin: 0, inBone: true };
const column: Place = { ...at, kind: 'column', column: 0, through: 0 };

describe('stress-life line of cold-worked steel', () => {
  const steel = materialOf('steel-cold-worked', 'metal');
  test('0.9 of 860 MPa at a thousand cycles, 300 x 0.9 from a million on, straight in the logarithms between', () => {
    expect(fatigueStress(steel, 1e3)).toBeCloseTo(774, 6);
    expect(fatigueStress(steel, 1e6)).toBeCloseTo(270, 6);
    expect(fatigueStress(steel, 1e8)).toBeCloseTo(270, 6);
    expect(fatigueStress(steel, 10 ** 4.5)).toBeCloseTo(Math.sqrt(774 * 270), 6);
  });
});

describe('what a place bears', () => {
  test('a pin: yield at the misstep where steps are few, fatigue at every step where they are many', () => {
    const often = { ...figures, demand: { ...figures.demand, repeatedShare: 0.8 } };
    expect(strengthAt(pin, { ...figures, demand: { ...figures.demand, repeatedShare: 0.1 } })).toBe(690);
    expect(strengthAt(pin, often)).toBeCloseTo(figures.pins[0]!.fatigueMPa / 0.8, 9);
  });
  test('acrylic: 15 MPa again and again, of 60 once', () => {
    expect(strengthAt(column, figures)).toBeCloseTo(15 / figures.demand.repeatedShare, 9);
    expect(strengthAt(column, { ...figures, demand: { ...figures.demand, repeatedShare: 0.1 } })).toBe(60);
  });
  test('bone: 0.6 % of its modulus', () => {
    expect(strengthAt({ ...at, kind: 'hole', pin: 0 }, figures)).toBeCloseTo(72, 9);
  });
});

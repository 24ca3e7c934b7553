/**
 * One pin a fragment, rigid bone, ball ends: 1/k = 2 L^3 / 3 E I_pin + e^2 L_b / E I_col + L_b / E A_col (the pins bend as
 * cantilevers, the column bends and shortens), 36.04 N/mm. And a table of variants of the two-pin frame computed by an
 * independent solver of the same beams and printed to three digits: each within half a unit of its last digit.
 */
import { describe, expect, test } from 'vitest';
import { BASE, type Fixator, stiffnesses } from './fixator.ts';

test('one pin a fragment: the closed form, 36.04 N/mm', () => {
  const [L, base] = [12, 10];
  const pinI = (Math.PI * 1.6 ** 4) / 64;
  const columnI = (Math.PI * 6 ** 4) / 64;
  const flexibility =
    (2 * L ** 3) / (3 * 193000 * pinI) + (L ** 2 * base) / (2500 * columnI) + base / (2500 * Math.PI * 9);
  const [axial = 0] = stiffnesses({ ...BASE, pinsMm: [5], boneMPa: 1.5e10 });
  expect(axial).toBeCloseTo(36.04, 2);
  // The bone is not quite rigid: what is left is its own bending, 1e-6 of the whole.
  expect(Math.abs(axial * flexibility - 1)).toBeLessThan(2e-6);
});

const round = (od: number) => ({ shape: 'round', od }) as const;
const HEDGEHOG: Partial<Fixator> = {
  bone: { shape: 'tube', od: 3.5, id: 2.2 },
  pinsMm: [4, 8],
  pin: round(0.9),
  offsetMm: 8,
  gapMm: 1,
  boneToMm: 14,
};

/** Axial with ball ends and guided (N/mm), torsion, bending in the plane of the pins and across it (N·mm/deg). */
const TABLE: readonly (readonly [string, Partial<Fixator>, readonly string[]])[] = [
  ['two pins a fragment', {}, ['67.1', '164', '53.5', '140', '76.8']],
  ['three pins', { pinsMm: [5, 10, 15] }, ['74.7', '198', '64.6', '144', '81.7']],
  ['four pins', { pinsMm: [5, 5 + 10 / 3, 5 + 20 / 3, 15] }, ['77.3', '215', '72.5', '146', '86.6']],
  ['pins bunched', { pinsMm: [5, 10] }, ['72.6', '152', '53.1', '137', '60.2']],
  ['pins far from the fracture', { pinsMm: [10, 20] }, ['41.6', '184', '45.6', '99.8', '63.0']],
  ['pins 1.0 mm', { pin: round(1) }, ['34.2', '52.4', '13.5', '125', '28.4']],
  ['pins 1.2 mm', { pin: round(1.2) }, ['47.7', '89.3', '24.7', '129', '45.7']],
  ['pins 2.0 mm', { pin: round(2) }, ['79.8', '217', '81.6', '151', '99.1']],
  ['offset 8 mm', { offsetMm: 8 }, ['160', '398', '62.7', '144', '101']],
  ['offset 16 mm', { offsetMm: 16 }, ['35.5', '83.2', '47.4', '136', '58.6']],
  ['offset 24 mm', { offsetMm: 24 }, ['14.1', '30.3', '39.8', '132', '37.6']],
  ['column 4 mm', { column: round(4) }, ['18.0', '122', '26.5', '40.7', '29.3']],
  ['column 8 mm', { column: round(8) }, ['146', '211', '67.6', '266', '118']],
  ['column 10 mm', { column: round(10) }, ['228', '263', '73.5', '363', '140']],
  ['column 1800 MPa', { columnMPa: 1800 }, ['52.1', '153', '48.2', '111', '65.0']],
  ['column 3000 MPa', { columnMPa: 3000 }, ['76.8', '171', '56.2', '157', '83.6']],
  ['column 5000 MPa', { columnMPa: 5000 }, ['110', '191', '62.9', '212', '102']],
  ['steel rod 3.2 mm', { column: round(3.2), columnMPa: 193000, columnNu: 0.3 }, ['212', '255', '72.7', '343', '136']],
  ['18G needle pins', { pin: { shape: 'tube', od: 1.27, id: 0.838 } }, ['47.9', '90.2', '25.0', '128', '46.1']],
  ['a column on both sides', { isTwoSided: true }, ['647', '647', '143', '426', '137']],
  ['hedgehog', HEDGEHOG, ['86.3', '99.5', '11.9', '73.5', '15.8']],
  ['hedgehog, pins 1.2 mm', { ...HEDGEHOG, pin: round(1.2) }, ['149', '188', '26.8', '77.3', '33.5']],
  ['hedgehog, offset 12 mm', { ...HEDGEHOG, offsetMm: 12 }, ['29.6', '33.3', '8.97', '70.8', '8.73']],
];

describe('variants of the two-pin frame', () => {
  test.each(TABLE)('%s', (_, change, printed) => {
    const found = stiffnesses({ ...BASE, ...change });
    const misses = printed.filter((text, i) => !(Math.abs((found[i] ?? 0) - Number(text)) <= halfUnit(text)));
    expect(misses).toEqual([]);
  });
});

/** Half a unit of the last printed digit, and a hair for the halves that printing rounds. */
function halfUnit(text: string): number {
  const digits = text.split('.')[1]?.length ?? 0;
  return 0.5001 * 10 ** -digits;
}

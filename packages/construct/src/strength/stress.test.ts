import { describe, expect, test } from 'vitest';
import { columnSection, rodSection } from './sections.ts';
import { columnStress, holeStress, rodStress } from './stress.ts';

/** N, Vy, Vz, T, My, Mz. */
const forces = (...six: number[]) => ({ all: Float64Array.from(six), at: 0 });

describe('rod of 1.6 mm (handbook values of the fact sheet)', () => {
  const rod = rodSection(1.6, 0);
  test('100 N.mm of bending: 32 M / (pi d^3) = 248.68 MPa, whichever way', () => {
    expect(rodStress(forces(0, 0, 0, 0, 0, 100), rod)).toBeCloseTo(248.68, 2);
    expect(rodStress(forces(0, 0, 0, 0, 60, 80), rod)).toBeCloseTo(248.68, 2);
  });
  test('20 N.mm of twist: shear 16 T / (pi d^3) = 24.868 MPa, times the root of 3', () => {
    expect(rodStress(forces(0, 0, 0, 20, 0, 0), rod)).toBeCloseTo(24.868 * Math.sqrt(3), 2);
  });
  test('a pull adds N / A on the bent side, whatever its sign', () => {
    const area = (Math.PI / 4) * 1.6 ** 2;
    expect(rodStress(forces(-50, 0, 0, 0, 0, 100), rod)).toBeCloseTo(248.68 + 50 / area, 2);
  });
  test('a needle keeps the section of its tube: 18 gauge, I 0.1035 mm4', () => {
    expect(1.27 / 2 / rodSection(1.27, 0.838).bendingPerMm3).toBeCloseTo(0.1035, 4);
  });
});

describe('column of 6 mm', () => {
  const column = { diameterMm: 6, moulded: true } as Parameters<typeof columnSection>[0];
  test('whole, it is a round rod', () => {
    const whole = columnSection({ ...column, moulded: false }, 0.9);
    expect(columnStress(forces(10, 0, 0, 5, 30, 40), whole)).toBeCloseTo(
      rodStress(forces(10, 0, 0, 5, 30, 40), rodSection(6, 0)),
      9,
    );
  });
  test('a pin through it takes d D^3 / 12 in the plane of the pin and next to nothing across it', () => {
    const slotted = columnSection(column, 0.9);
    const whole = (Math.PI / 64) * 6 ** 4;
    expect(columnStress(forces(0, 0, 0, 0, 0, 100), slotted)).toBeCloseTo(300 / (whole - (0.9 * 6 ** 3) / 12), 9);
    expect(columnStress(forces(0, 0, 0, 0, 100, 0), slotted)).toBeCloseTo(300 / (whole - (6 * 0.9 ** 3) / 12), 9);
  });
});

describe('bone at a hole on its medial side', () => {
  const hole = {
    areaMm2: 10,
    aboutYPerMm3: 0.1,
    aboutZPerMm3: 0.1,
    twistPerMm3: 0.05,
    towards: [1, 0] as const,
    factor: 1.6,
  };
  test('bent in the medial plane the hole lies at the outermost fibre and counts in full', () => {
    expect(holeStress(forces(0, 0, 0, 0, 0, 100), hole)).toBeCloseTo(1.6 * 10, 9);
  });
  test('bent across it the hole lies on the neutral axis and counts half', () => {
    expect(holeStress(forces(0, 0, 0, 0, 100, 0), hole)).toBeCloseTo(1.3 * 10, 9);
  });
  test('pull and twist take the whole factor', () => {
    expect(holeStress(forces(100, 0, 0, 0, 0, 0), hole)).toBeCloseTo(1.6 * 10, 9);
    expect(holeStress(forces(0, 0, 0, 100, 0, 0), hole)).toBeCloseTo(1.6 * 5 * Math.sqrt(3), 9);
  });
});

/** Section properties against closed forms and limits. */
import { describe, expect, test } from 'vitest';
import { sectionProperties, shearCoefficient } from './section.ts';
import { peakStressMPa } from './stress.ts';

const round = { shape: 'round', od: 1.6 } as const;

test('wire of 1.6 mm: the printed A 2.01062, I 0.321699, J 0.643398', () => {
  const { areaMm2, iyMm4, izMm4, jMm4 } = sectionProperties(round);
  expect(areaMm2).toBeCloseTo(2.01062, 5);
  expect(iyMm4).toBeCloseTo(0.321699, 6);
  expect(izMm4).toBeCloseTo(0.321699, 6);
  expect(jMm4).toBeCloseTo(0.643398, 6);
});

test('a solid ellipse: J = pi a^3 b^3 / (a^2 + b^2) (Saint-Venant)', () => {
  const [a, b] = [3, 2];
  const { jMm4 } = sectionProperties({ shape: 'ovalTube', odY: 2 * a, odZ: 2 * b, idY: 0, idZ: 0 });
  expect(jMm4).toBeCloseTo((Math.PI * a ** 3 * b ** 3) / (a ** 2 + b ** 2), 9);
});

test('an oval is stiffer against bending along its longer side', () => {
  const { iyMm4, izMm4 } = sectionProperties({ shape: 'ovalTube', odY: 6, odZ: 5, idY: 4, idZ: 3.4 });
  expect(izMm4).toBeGreaterThan(iyMm4);
  expect(izMm4).toBeCloseTo((Math.PI / 64) * (5 * 6 ** 3 - 3.4 * 4 ** 3), 9);
});

describe('shear coefficient (Cowper 1966)', () => {
  test('solid circle 6 (1 + nu) / (7 + 6 nu), also as a tube without bore', () => {
    expect(shearCoefficient(round, 0.3)).toBeCloseTo(7.8 / 8.8, 12);
    expect(shearCoefficient({ shape: 'tube', od: 2, id: 0 }, 0.3)).toBeCloseTo(7.8 / 8.8, 12);
  });

  test('thin tube 2 (1 + nu) / (4 + 3 nu)', () => {
    expect(shearCoefficient({ shape: 'tube', od: 2, id: 2 * (1 - 1e-9) }, 0.3)).toBeCloseTo(2.6 / 4.9, 6);
  });

  test('a round tube written as an oval has the same', () => {
    const oval = { shape: 'ovalTube', odY: 5, odZ: 5, idY: 3, idZ: 3 } as const;
    expect(shearCoefficient(oval, 0.3)).toBeCloseTo(shearCoefficient({ shape: 'tube', od: 5, id: 3 }, 0.3), 12);
  });
});

describe('peak stress', () => {
  test('a solid ellipse in torsion: 2 T / (pi a b^2) at the ends of the short axis', () => {
    const [a, b, T] = [3, 2, 50];
    const section = sectionProperties({ shape: 'ovalTube', odY: 2 * b, odZ: 2 * a, idY: 0, idZ: 0 });
    const shear = (2 * T) / (Math.PI * a * b ** 2);
    expect(peakStressMPa(section, [0, 0, 0, T, 0, 0, 0, 0, 0, -T, 0, 0])).toBeCloseTo(Math.sqrt(3) * shear, 9);
  });

  test('the worse end counts, pull and push alike', () => {
    const section = sectionProperties(round);
    const ends = [-4, 0, 0, 0, 1, 2, 4, 0, 0, 0, 3, -4];
    const bending = (5 * 0.8) / section.iyMm4;
    expect(peakStressMPa(section, ends)).toBeCloseTo(4 / section.areaMm2 + bending, 9);
  });
});

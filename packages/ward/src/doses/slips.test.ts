/** Properties: no slip of the point or of the unit, and no dose of another animal, goes by without a word. */
import { doseFigures, drugs } from '@bonewright/evidence';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rangeRemarks } from './checks/range.ts';
import { strengthRemarks } from './checks/strength.ts';
import { relationTo } from './patient-kind.ts';
import { countedFor } from './published.ts';

const SPECIES = [
  'hedgehog',
  'red squirrel',
  'grey squirrel',
  'rabbit',
  'red fox',
  'tawny owl',
  'barn owl',
  'wood pigeon',
  'stoat',
];
const ROUTES = ['IM', 'SC', 'IV', 'PO', 'local'] as const;
const SLIPS = [10, 1 / 10, 1000, 1 / 1000];

const patient = fc.record({ species: fc.constantFrom(...SPECIES), route: fc.constantFrom(...ROUTES) });
const within = fc.double({ min: 0, max: 1, noNaN: true });
const slip = fc.constantFrom(...SLIPS);
const isStop = ({ needs }: { readonly needs: string }) => needs !== 'nothing';

describe('a dose that is ten or a thousand times off a published one is stopped', () => {
  test('typed, against every figure its patient is held to', () => {
    fc.assert(
      fc.property(
        patient,
        fc.constantFrom(...drugs),
        within,
        slip,
        ({ species, route }, { id, unit }, share, times) => {
          for (const { low, high } of countedFor(id, species, route).figures) {
            const perKg = (low + share * (high - low)) * times;
            expect(rangeRemarks({ drug: id, species, route, figureId: null, perKg, unit }).some(isStop)).toBe(true);
          }
        },
      ),
    );
  });
  test('with a figure picked, whatever animal it is of', () => {
    fc.assert(
      fc.property(
        patient,
        fc.constantFrom(...doseFigures),
        within,
        slip,
        ({ species, route }, figure, share, times) => {
          const perKg = (figure.low + share * (figure.high - figure.low)) * times;
          const asked = { drug: figure.drug, species, route, figureId: figure.id, perKg, unit: 'mg' as const };
          expect(rangeRemarks(asked).some(isStop)).toBe(true);
        },
      ),
    );
  });
  test('and a drug nobody published for, at any dose', () => {
    fc.assert(
      fc.property(patient, fc.double({ min: 1e-6, max: 1e4, noNaN: true }), ({ species, route }, perKg) => {
        const asked = { drug: 'made-up drug', species, route, figureId: null, perKg, unit: 'mg' as const };
        expect(rangeRemarks(asked).some(isStop)).toBe(true);
      }),
    );
  });
});

test('a strength ten or a thousand times off every vial, or one that has a tenfold sister, is stopped', () => {
  for (const { id, unit, strengths } of drugs)
    for (const { perMl } of strengths)
      for (const times of SLIPS) {
        const remarks = strengthRemarks({ drug: id, strength: { value: perMl * times, unit: `${unit}/ml` } });
        expect(remarks.some(isStop), `${id} ${perMl} x ${times}`).toBe(true);
      }
});

test('a figure of another animal is never used without saying whose it is', () => {
  fc.assert(
    fc.property(patient, fc.constantFrom(...doseFigures), ({ species, route }, figure) => {
      const asked = { drug: figure.drug, species, route, figureId: figure.id, perKg: figure.low, unit: 'mg' as const };
      const said = rangeRemarks(asked)
        .map(({ words }) => words)
        .join(' ');
      if (relationTo(figure, species) !== 'own') expect(said).toContain(figure.studied);
    }),
  );
});

test('nor is a typed dose held against another animal’s range without saying so', () => {
  fc.assert(
    fc.property(patient, fc.constantFrom(...drugs), ({ species, route }, { id, unit }) => {
      const { figures, areOwn } = countedFor(id, species, route);
      const codes = rangeRemarks({ drug: id, species, route, figureId: null, perKg: 1, unit }).map(({ code }) => code);
      if (figures.length > 0 && !areOwn) expect(codes).toContain('other-species');
    }),
  );
});

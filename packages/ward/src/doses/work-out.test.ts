/** Doses worked out to a volume: worked values of a hedgehog of 0.75 kg, and volumes printed in the resuscitation table. */
import { InputError } from '@bonewright/fault';
import { describe, expect, test } from 'vitest';
import { doseLine } from './test-line.ts';
import { partsThatHelp, workOut } from './work-out.ts';

const line = (drug: string, mgPerKg: number, mgPerMl: number) =>
  workOut(
    doseLine({
      drug,
      massG: 750,
      dose: { value: mgPerKg, unit: 'mg/kg' },
      strength: { value: mgPerMl, unit: 'mg/ml' },
    }),
  );

describe('hedgehog of 0.75 kg, worked by hand', () => {
  test.each([
    ['ketamine', 5, 100, 3.75, 0.0375],
    ['medetomidine', 0.1, 1, 0.075, 0.075],
    ['adrenaline', 0.01, 1, 0.0075, 0.0075],
    ['adrenaline', 0.01, 0.1, 0.0075, 0.075],
    ['lidocaine', 2, 20, 1.5, 0.075],
  ])('%s %s mg/kg of %s mg/ml is %s mg in %s ml', (drug, dose, strength, mg, ml) => {
    const { amount, exactMl } = line(drug, dose, strength);
    expect(amount).toBeCloseTo(mg, 12);
    expect(exactMl).toBeCloseTo(ml, 12);
  });
  test('atipamezole at 5 times the medetomidine is 0.375 mg in 0.075 ml of 5 mg/ml', () => {
    const { amount, exactMl } = line('atipamezole', 0.5, 5);
    expect([amount, exactMl]).toEqual([expect.closeTo(0.375, 12), expect.closeTo(0.075, 12)]);
  });
});

/** Merck Veterinary Manual, table of drugs for resuscitation, 2024: ml for each kg. */
test.each([
  ['adrenaline', 0.01, 1, 'mg', 0.01],
  ['lidocaine', 2, 20, 'mg', 0.1],
  ['vasopressin', 0.8, 20, 'U', 0.04],
] as const)('%s %s a kg of %s %s/ml is %s ml a kg, as printed', (drug, dose, strength, unit, mlPerKg) => {
  const { exactMl } = workOut(
    doseLine({
      drug,
      massG: 1000,
      dose: { value: dose, unit: `${unit}/kg` },
      strength: { value: strength, unit: `${unit}/ml` },
    }),
  );
  expect(exactMl).toBeCloseTo(mlPerKg, 12);
});

test('micrograms and milligrams of the same dose draw the same volume', () => {
  const base = { drug: 'medetomidine', massG: 310 };
  const milli = workOut(doseLine({ ...base, dose: { value: 0.0676, unit: 'mg/kg' } }));
  const micro = workOut(
    doseLine({ ...base, dose: { value: 67.6, unit: 'µg/kg' }, strength: { value: 1000, unit: 'µg/ml' } }),
  );
  expect(micro.exactMl).toBeCloseTo(milli.exactMl, 12);
});

test('rounding to the mark says what it does to the dose', () => {
  const { drawnMl, drawnAmount, changePercent } = line('ketamine', 5, 100);
  expect([drawnMl, drawnAmount]).toEqual([0.04, 4]);
  expect(changePercent).toBeCloseTo(100 * (4 / 3.75 - 1), 9);
});

test('one part in ten: strength, volume and a recipe of whole marks', () => {
  const worked = workOut(
    doseLine({
      drug: 'adrenaline',
      massG: 750,
      dose: { value: 0.01, unit: 'mg/kg' },
      strength: { value: 1, unit: 'mg/ml' },
      dilution: { parts: 10, diluent: 'saline' },
    }),
  );
  expect(worked.exactMl).toBeCloseTo(0.075, 12);
  expect(worked.recipe).toEqual({ drugMl: 0.1, diluentMl: 0.9, totalMl: 1, perMl: 0.1 });
});

test('the dilution that is proposed makes a volume a syringe can measure, and none where none is needed', () => {
  expect(partsThatHelp(0.0075)).toBe(20);
  expect(partsThatHelp(0.0375)).toBe(4);
  expect(partsThatHelp(0.05)).toBeNull();
});

test.each([
  ['mass against units', { dose: { value: 1, unit: 'U/kg' } }],
  ['units for a drug in mg', { dose: { value: 1, unit: 'U/kg' }, strength: { value: 1, unit: 'U/ml' } }],
] as const)('refused: %s', (_, change) => {
  expect(() => workOut(doseLine({ drug: 'ketamine', ...change }))).toThrow(InputError);
});

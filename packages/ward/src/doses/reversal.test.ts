import { expect, test } from 'vitest';
import { doEqualVolumesReverse, reversalsOf } from './reversal.ts';

const given = (drug: string, amount: number) => ({
  doseId: 'dose-one',
  drug,
  route: 'IM' as const,
  site: '',
  amount,
  givenAt: '2026-11-25T21:00:00Z',
});

test('hedgehog of 0.75 kg: 0.075 mg of medetomidine asks 0.375 mg of atipamezole, 0.5 mg/kg', () => {
  const [reversal] = reversalsOf([given('medetomidine', 0.075)], 750);
  expect(reversal).toMatchObject({ amountMg: expect.closeTo(0.375, 12), perKg: expect.closeTo(0.5, 12) });
});

test('ten times the dexmedetomidine, and nothing for ketamine', () => {
  const all = reversalsOf([given('dexmedetomidine', 0.0375), given('ketamine', 3.75)], 750);
  expect(all.map(({ amountMg }) => amountMg)).toEqual([expect.closeTo(0.375, 12)]);
});

/** BSAVA Small Animal Formulary, hedgehogs: 5 mg/ml against 1 mg/ml of medetomidine or 0.5 mg/ml of dexmedetomidine. */
test('equal volumes reverse at the published strengths and undiluted only', () => {
  const undiluted = (perMl: number) => ({ perMl, isDiluted: false });
  expect(doEqualVolumesReverse('medetomidine', undiluted(1), undiluted(5))).toBe(true);
  expect(doEqualVolumesReverse('dexmedetomidine', undiluted(0.5), undiluted(5))).toBe(true);
  expect(doEqualVolumesReverse('dexmedetomidine', undiluted(0.1), undiluted(5))).toBe(false);
  expect(doEqualVolumesReverse('medetomidine', { perMl: 0.1, isDiluted: true }, undiluted(5))).toBe(false);
  expect(doEqualVolumesReverse('medetomidine', undiluted(1), { perMl: 0.5, isDiluted: true })).toBe(false);
});

import { describe, expect, test } from 'vitest';
import type { Case } from '../model/case-file.ts';
import { straightBone } from '../straight-bone.ts';
import { demandOf, eventOf, unionWeeks } from './demand.ts';
import { classOf } from './species.ts';

const RABBIT = straightBone({
  lengthMm: 80,
  outerMm: 7,
  canalMm: 4,
  gapMm: 1,
  pinMm: 1.4,
  pins: [[15], [65]],
  columnMm: 9,
  clearanceMm: 6,
});

const patient = (species: string, massG: number, more: object = {}): Case => {
  const { loads: _, ...bare } = RABBIT;
  return { ...bare, patient: { species, massG, ...more } };
};

test('0.8 kg: 2 body weights along the bone, 2.5 body weights cm of bending (fact sheet, worked example)', () => {
  const { axialN, bendingNmm, torsionNmm } = demandOf(patient('rabbit', 800));
  // 2 x 0.8 kg x 9.80665 m/s2; the sheet's 15.7 N and 195 N.mm are printed to their last digit.
  expect(axialN).toBeCloseTo(15.69, 2);
  expect(bendingNmm).toBeGreaterThan(190);
  expect(bendingNmm).toBeLessThan(195);
  expect(torsionNmm).toBeCloseTo(bendingNmm / 2, 9);
});

test('twice the mass: twice the force, and the bending of a longer lever besides', () => {
  const one = demandOf(patient('rabbit', 600));
  const two = demandOf(patient('rabbit', 1200));
  expect(two.axialN / one.axialN).toBeCloseTo(2, 9);
  expect(two.bendingNmm / one.bendingNmm).toBeCloseTo(2 ** (4 / 3), 9);
});

test('what the user typed goes before the registry', () => {
  const typed: Case = { ...patient('rabbit', 800), loads: { axialN: 7, cyclesPerDay: 100, days: 10 } };
  expect(demandOf(typed)).toMatchObject({ axialN: 7, cycles: 1000 });
});

test('a bird stands on two legs: its ordinary step is nearer to its misstep', () => {
  expect(demandOf(patient('tawny owl', 440)).repeatedShare).toBeGreaterThan(
    demandOf(patient('rabbit', 440)).repeatedShare,
  );
});

describe('species by the words keepers use', () => {
  test.each([
    ['tawny owl', 'bird'],
    ['Barn Owls', 'bird'],
    ['red-tailed hawk', 'bird'],
    ['mute swan', 'bird'],
    ['red squirrel', 'mammal'],
    ['hedgehog', 'mammal'],
    ['brown hare (leveret)', 'mammal'],
    ['bat', 'mammal'],
  ])('%s: %s', (species, expected) => {
    expect(classOf(patient(species, 300))).toBe(expected);
  });
  test('a class that is given goes before the name', () => {
    expect(classOf(patient('Strix', 300, { class: 'bird' }))).toBe('bird');
  });
});

test('weeks to union: birds and the young soonest, grown mammals over 2 kg last', () => {
  const weeks = [patient('kestrel', 200), patient('rabbit', 1400), patient('fox', 5000)].map(unionWeeks);
  expect(weeks).toEqual([...weeks].sort((a, b) => a - b));
  expect(unionWeeks(patient('rabbit', 400, { ageClass: 'juvenile' }))).toBe(weeks[0]);
});

test('what the patient does: curl, push-off, twist, flap', () => {
  expect(eventOf(patient('hedgehog', 800), 'bending-in-plane')).toBe('curl');
  expect(eventOf(patient('tawny owl', 440), 'axial-ball')).toBe('push-off or landing on a perch');
  expect(eventOf(patient('rabbit', 800), 'torsion')).toBe('twist');
  const wing = patient('buzzard', 800);
  expect(eventOf({ ...wing, bone: { ...wing.bone, name: 'humerus' } }, 'axial-ball')).toBe('flap against the cage');
});

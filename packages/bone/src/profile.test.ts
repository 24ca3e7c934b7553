import { value } from '@bonewright/evidence';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changed, profileOf, type Station, sectionAt } from './index.ts';

const station = (sMm: number, outer: number, canal: number | null): Station => ({
  sMm,
  outerMm: [outer, outer],
  canalMm: canal === null ? null : [canal, canal],
  offsetMm: [sMm / 10, 0],
  sdMm: 0.05,
});

test('between stations everything runs linearly, past the last ones it is held', () => {
  const profile = profileOf(40, [station(10, 4, 2), station(30, 6, 3)], 'mammal');
  expect(sectionAt(profile, 20)).toMatchObject({ outerMm: [5, 5], canalMm: [2.5, 2.5], offsetMm: [2, 0] });
  expect(sectionAt(profile, 0).outerMm).toEqual([4, 4]);
  expect(sectionAt(profile, 40).outerMm).toEqual([6, 6]);
  expect(profile.canalBasis).toBe('measured');
});

test('a canal that was not measured takes the bore of its neighbours, and is less sure', () => {
  const profile = profileOf(40, [station(0, 4, 2), station(20, 8, null), station(40, 4, 2)], 'mammal');
  const middle = sectionAt(profile, 20);
  expect(middle.canalMm).toEqual([4, 4]);
  expect(middle.canalSdMm).toBeGreaterThan(8 * middle.sdMm);
  expect(profile.canalBasis).toBe('neighbouring stations');
});

test('with no canal measured anywhere the usual bore of a bird is wider than that of a mammal', () => {
  const stations = [station(0, 5, null), station(40, 5, null)];
  const bird = profileOf(40, stations, 'bird');
  expect(sectionAt(bird, 20).canalMm[0]).toBeCloseTo(5 * value('bone.bird.bore-ratio'), 12);
  expect(sectionAt(bird, 20).canalMm[0]).toBeGreaterThan(sectionAt(profileOf(40, stations, 'mammal'), 20).canalMm[0]);
  expect(bird.canalBasis).toBe('usual bore of the class');
});

test('however far the readings are off, a wall is left', () => {
  const profile = profileOf(40, [station(0, 4, 3), station(40, 5, 3.9)], 'mammal');
  const off = fc.double({ min: -3, max: 3, noNaN: true });
  fc.assert(
    fc.property(off, off, fc.double({ min: 0, max: 40, noNaN: true }), (outer, canal, s) => {
      const bone = sectionAt(
        changed(
          profile,
          () => outer,
          () => canal,
        ),
        s,
      );
      expect(bone.canalMm[0]).toBeLessThan(bone.outerMm[0]);
      expect(bone.canalMm[0]).toBeGreaterThanOrEqual(0);
    }),
  );
});

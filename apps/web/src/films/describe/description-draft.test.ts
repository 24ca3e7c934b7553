import { emptyCase } from '@bonewright/casebook';
import type { JoinedBone } from '@bonewright/film';
import { expect, test } from 'vitest';
import { described, faultsIn } from './description-draft.ts';
import { firstGuess } from './first-guess.ts';
import { readDescription } from './read-description.ts';

const nothing = { value: null, sd: null };
const station = (sMm: number, width: number): JoinedBone['stations'][number] => ({
  sMm,
  outerMm: [width, width - 1],
  canalMm: null,
  offsetMm: [0, 0],
  sdMm: 0.05,
});
const bone: JoinedBone = {
  lengthMm: { value: 52, sd: 0.3 },
  stations: [station(0, 7), station(26, 4), station(52, 6)],
  fracture: { fromMm: 24.04, toMm: 26.5, obliquityDeg: 20 },
  angulationDeg: { craniocaudal: nothing, mediolateral: nothing, true: nothing },
  planeFromCraniocaudalDeg: nothing,
  translationMm: nothing,
  narrowestCanalMm: null,
  warnings: [],
};
const guess = firstGuess(emptyCase(''), bone);

test('the guess comes from the films where they say something, and can be recorded as it stands', () => {
  expect(guess).toMatchObject({ from: '24', to: '26.5', obliquity: '20', keepOutProximal: '7', keepOutDistal: '6' });
  const [fracture, keepOut, soft] = described(guess, bone);
  expect(fracture?.payload).toMatchObject({
    fromMm: 24,
    toMm: 26.5,
    obliquityDeg: 20,
    comminuted: false,
    fissuresMm: [],
  });
  expect(keepOut?.payload).toEqual({ proximalMm: 7, distalMm: 6 });
  expect(soft?.payload).toEqual({
    softTissueMm: [
      { sMm: 0, depthMm: 7 },
      { sMm: 52, depthMm: 6 },
    ],
  });
});

test('a gap wider than the broken stretch is named, with both figures', () => {
  expect(faultsIn({ ...guess, gap: '3' }, bone).gap).toContain('2.5 mm');
  expect(described({ ...guess, gap: '3' }, bone)).toEqual([]);
});

test('a fracture beyond the end of the bone, or running backwards, is refused', () => {
  expect(faultsIn({ ...guess, to: '53' }, bone).to).toContain('52');
  expect(faultsIn({ ...guess, from: '30' }, bone).to).toContain('before');
});

test.each([
  [
    '21 to 24, 30 to 31,5',
    [
      [21, 24],
      [30, 31.5],
    ],
  ],
  ['21–24', [[21, 24]]],
  ['', []],
])('fissures "%s" are read', (text, expected) => {
  const [fracture] = described({ ...guess, fissures: text }, bone);
  expect(fracture?.payload).toMatchObject({ fissuresMm: expected });
});

test.each(['21', '24 to 21', 'near the knee', '21 to 24 to 30'])('fissures "%s" are not', (text) => {
  expect(faultsIn({ ...guess, fissures: text }, bone).fissures).toContain('21 to 24');
});

test('only fields that somebody typed in are kept, and none of another shape', () => {
  expect(readDescription({ gap: '1', comminuted: true, from: 3, gone: 'x' })).toEqual({ gap: '1', comminuted: true });
  expect(readDescription('x')).toEqual({});
});

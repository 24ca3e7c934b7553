import { expect, test } from 'vitest';
import { asRecorded, type HandMeasure, measured, resultWords } from './hand-measure.ts';

const length: HandMeasure = {
  id: 'measure-a',
  kind: 'length',
  points: [
    [0, 0],
    [30, 40],
  ],
};

test('a length is millimetres where there is a scale, pixels where there is none', () => {
  const inMm = measured(length, { value: 0.1, sd: 0.001 });
  // 50 px: clicks 0.0409 mm, scale 0.05 mm.
  expect(inMm && resultWords(inMm)).toBe('5.00 mm ± 0.06');
  const inPixels = measured(length, { value: null, sd: null });
  expect(inPixels && resultWords(inPixels)).toBe('50.0 pixels ± 0.4');
});

test('two edges along the bone are no diameter, and it says so', () => {
  const along: HandMeasure = {
    id: 'measure-b',
    kind: 'diameter',
    points: [
      [0, 0],
      [0, 100],
      [3, 10],
      [3, 60],
    ],
  };
  const none = measured(along, { value: 0.1, sd: 0 });
  expect(none && resultWords(none)).toMatch(/^not measured: the two edges/);
});

test('it is recorded with what it gave; without a value there is none', () => {
  expect(asRecorded('film-0001', length, { value: 0.1, sd: 0 }).found).toMatchObject({ value: 5, unit: 'mm' });
  const flat: HandMeasure = {
    id: 'measure-c',
    kind: 'angle',
    points: [
      [1, 1],
      [1, 1],
      [5, 5],
    ],
  };
  expect(asRecorded('film-0001', flat, { value: 0.1, sd: 0 }).found).toBeNull();
});

import { expect, test } from 'vitest';
import { calibrate } from './calibrate.ts';

const blank = { rows: 4, cols: 4, pixels: new Uint16Array(16), photometric: 'MONOCHROME2' };

test('a 1.5 mm pin 25 pixels across is 0.06 mm a pixel, as sure as two clicks let it be', () => {
  const { mmPerPixel } = calibrate(blank, {
    kind: 'implant',
    diameterMm: 1.5,
    across: [
      [10, 10],
      [30, 25],
    ],
  });
  expect(mmPerPixel.value).toBeCloseTo(0.06, 12);
  // Two points uniform in a pixel: their distance has an sd of 1 / sqrt(6) pixels; 0.289 is rounded.
  expect((mmPerPixel.sd ?? 0) / 0.06).toBeCloseTo(1 / Math.sqrt(6) / 25, 4);
});

test('two clicks at one place say nothing, and why', () => {
  const at = [5, 5] as const;
  expect(calibrate(blank, { kind: 'implant', diameterMm: 1.5, across: [at, at] }).mmPerPixel).toMatchObject({
    value: null,
    why: expect.stringContaining('one place'),
  });
});

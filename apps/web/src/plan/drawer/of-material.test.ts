import { expect, test } from 'vitest';
import { ofMaterial } from './of-material.ts';

test('another material leaves the figures of the bench test behind, and keeps the rest', () => {
  const tested = {
    id: 'putty 6',
    diameterMm: 6,
    material: 'epoxy-putty',
    youngMPa: 3100,
    youngSdMPa: 90,
    yieldMPa: 31,
  };
  expect(ofMaterial(tested, 'acrylic')).toEqual({ id: 'putty 6', diameterMm: 6, material: 'acrylic' });
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BLOOD_BANDS, bloodLoss, bloodVolume, swabsMl } from './blood-loss.ts';

test('a rabbit of 4.54 kg at 7 % of its weight has 318 ml, and 15 % of that is 48 ml (Long Beach withdrawal policy, 2001)', () => {
  // The policy's 70 ml/kg lies in the mammal's published range, not in the rabbit's of another source.
  const { lowMl, highMl } = bloodVolume('mammal', 4540);
  expect(lowMl).toBeLessThan(318);
  expect(highMl).toBeGreaterThan(318);
  expect(bloodLoss(48, { lowMl: 318, highMl: 318, evidence: '' }).percent).toBeCloseTo(15, 0);
});

test('40 g mouse of the same policy: 2.8 ml, 15 % is 0.42 ml', () => {
  const { percent, band } = bloodLoss(0.42, { lowMl: 2.8, highMl: 2.8, evidence: '' });
  expect(percent).toBeCloseTo(15, 9);
  expect(band).toBe('critical');
});

test('the low end of the volume decides, so that a loss looks no smaller than it is', () => {
  const volume = bloodVolume('mammal', 310);
  expect(volume.lowMl).toBeCloseTo(17.05, 9);
  expect(bloodLoss(2, volume).percent).toBeCloseTo(11.7, 1);
  expect(bloodLoss(2, volume).band).toBe('stop-and-think');
});

test('more blood lost is never a milder band', () => {
  const volume = bloodVolume('bird', 440);
  const losses = fc.double({ min: 0, max: 44, noNaN: true });
  fc.assert(
    fc.property(losses, losses, (a, b) => {
      const [less, more] = [Math.min(a, b), Math.max(a, b)].map((ml) => bloodLoss(ml, volume).band);
      expect(BLOOD_BANDS.indexOf(more ?? 'within')).toBeGreaterThanOrEqual(BLOOD_BANDS.indexOf(less ?? 'shock'));
    }),
  );
});

test('swabs: a gram gained is a ml; lighter than dry is refused', () => {
  expect(swabsMl(5.4, 2.1)).toBeCloseTo(3.3, 9);
  expect(() => swabsMl(2, 3)).toThrow('wet');
  expect(() => bloodVolume('bird', 0)).toThrow('mass');
});

import { value } from '@bonewright/evidence';
import { describe, expect, test } from 'vitest';
import { evaluateNominal } from '../assess.ts';
import { straightBone } from '../straight-bone.ts';
import { callusModulus } from './callus.ts';
import { frameShare, mayComeOff, takeDown } from './take-down.ts';

const RABBIT = straightBone({
  lengthMm: 80,
  outerMm: 7,
  canalMm: 4.5,
  gapMm: 1,
  pinMm: 1.4,
  pins: [[12], [22], [32], [48], [58], [68]],
  columnMm: 9,
  clearanceMm: 6,
  im: { diameterMm: 2, tiedIn: true },
  twoColumns: true,
  grip: 'usual',
  loads: { axialN: 20, bendingNmm: 200, torsionNmm: 100 },
});
const construct = RABBIT.construct!;

describe('callus', () => {
  test('straight in its logarithm from 0.5 MPa on day 3 to 1000 MPa at union, level after', () => {
    const [start, end] = [value('healing.callus.first-modulus'), value('healing.callus.union-modulus')];
    const union = value('healing.union.small-mammal');
    expect(callusModulus(RABBIT, { weeks: 0 })).toBeCloseTo(start, 9);
    expect(callusModulus(RABBIT, { weeks: union })).toBeCloseTo(end, 9);
    expect(callusModulus(RABBIT, { weeks: 3 * union })).toBeCloseTo(end, 9);
    const half = (3 / 7 + union) / 2;
    expect(callusModulus(RABBIT, { weeks: half })).toBeCloseTo(Math.sqrt(start * end), 6);
  });
  test('scored films go before the calendar', () => {
    expect(callusModulus(RABBIT, { weeks: 6, score: 4 })).toBeCloseTo(value('healing.callus.first-modulus'), 9);
    expect(callusModulus(RABBIT, { weeks: 1, score: 13 })).toBeCloseTo(value('healing.callus.union-modulus'), 9);
  });
});

describe('load share of the frame', () => {
  test('falls week by week, from nearly all to little', () => {
    const shares = [0, 2, 4, 6].map((weeks) => frameShare(RABBIT, construct, { weeks }));
    for (let i = 1; i < shares.length; i += 1) expect(shares[i]).toBeLessThan(shares[i - 1]!);
    expect(shares[0]).toBeGreaterThan(0.9);
    expect(mayComeOff(shares[0]!)).toBe(false);
    expect(mayComeOff(shares[3]!)).toBe(true);
  });
  test('is the frame over frame and callus, stiffness by stiffness (load share of BMC Musculoskelet Disord 2024)', () => {
    const frame = evaluateNominal(RABBIT, construct).loads['axial-guided'].stiffness;
    const area = (Math.PI / 4) * (value('healing.callus.width') * 7) ** 2;
    const lengthMm = value('healing.callus.least-length') * 7;
    for (const weeks of [2, 3]) {
      const callus = (callusModulus(RABBIT, { weeks }) * area) / lengthMm;
      // The frame's own stiffness holds the give of the bone between its pins, which does not bear on the share: 0.05.
      expect(Math.abs(frameShare(RABBIT, construct, { weeks }) - frame / (frame + callus))).toBeLessThan(0.05);
    }
  });
});

describe('take-down', () => {
  const stages = takeDown(RABBIT, construct, { weeks: 4 });
  test('draws the IM pin, cuts the far column, then removes every other pin', () => {
    expect(stages.map((s) => s.name)).toEqual([
      'as it stands',
      'IM pin drawn',
      'far column cut',
      'every other pin removed',
    ]);
    expect(stages.at(-1)!.construct.pins.map((p) => p.sMm)).toEqual([12, 32, 48, 68]);
    expect(stages.at(-1)!.construct.im).toBeNull();
  });
  test('each step hands more of the load to the callus', () => {
    for (const load of ['axial-guided', 'bending-out-of-plane', 'torsion'] as const) {
      const shares = stages.map((s) => s.loads.find((l) => l.load === load)!.frameShare);
      for (let i = 1; i < shares.length; i += 1) expect(shares[i]).toBeLessThan(shares[i - 1]!);
    }
  });
  test('a plain frame has nothing to draw or cut', () => {
    const plain = straightBone({
      lengthMm: 60,
      outerMm: 6,
      canalMm: 4,
      gapMm: 1,
      pinMm: 1.2,
      pins: [[15], [45]],
      columnMm: 8,
      clearanceMm: 5,
    });
    expect(takeDown(plain, plain.construct!, { weeks: 4 }).map((s) => s.name)).toEqual(['as it stands']);
  });
});

import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BenchTest, benchTest } from './bench-test.ts';

const exact = (value: number) => ({ value, sd: 0 });
/** 10 mm wide, 5 mm high, 100 mm span. I = 104.1667 mm4; 1 N sags L^3 / (48 E I) = 0.08 mm at 2500 MPa. */
const FLAT: BenchTest = {
  bar: { kind: 'flat', widthMm: exact(10), heightMm: exact(5) },
  spanMm: exact(100),
  sags: [100, 200, 400].map((massG) => ({ massG, sagMm: (massG / 1000) * 9.80665 * 0.08 })),
  sagSdMm: 0,
  breakingMassG: exact(3400),
};

describe('closed form of a simply supported bar under a force in its middle', () => {
  test('flat bar: modulus 2500 MPa, strength F L / (4 b h^2 / 6)', () => {
    const { youngMPa, strengthMPa } = benchTest(FLAT);
    expect(youngMPa.value).toBeCloseTo(2500, 6);
    // 3.4 kg = 33.34261 N; M = 833.565 N·mm; Z = 41.6667 mm3.
    expect(strengthMPa?.value).toBeCloseTo(20.005566, 6);
    expect(youngMPa.sd).toBeCloseTo(0, 9);
  });

  test('round bar: I = pi d^4 / 64, Z = pi d^3 / 32', () => {
    const sagMm = (9.80665 * 100 ** 3) / (48 * 3000 * ((Math.PI * 6 ** 4) / 64));
    const { youngMPa, mostBorneMPa } = benchTest({
      ...FLAT,
      bar: { kind: 'round', diameterMm: exact(6) },
      sags: [{ massG: 1000, sagMm }],
      breakingMassG: null,
    });
    expect(youngMPa.value).toBeCloseTo(3000, 6);
    expect(mostBorneMPa).toBeCloseTo((9.80665 * 100 * 32) / (4 * Math.PI * 6 ** 3), 9);
  });

  test('any bar gives back the modulus its sags were made with', () => {
    const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(size(2, 12), size(2, 8), size(100, 200), size(500, 8000), (b, h, span, young) => {
        const second = (b * h ** 3) / 12;
        const sagOf = (massG: number) => ((massG / 1000) * 9.80665 * span ** 3) / (48 * young * second);
        const most = 0.05 * span;
        const massG = (most / sagOf(1)) * 0.9;
        const { youngMPa } = benchTest({
          ...FLAT,
          bar: { kind: 'flat', widthMm: exact(b), heightMm: exact(h) },
          spanMm: exact(span),
          sags: [massG / 2, massG].map((m) => ({ massG: m, sagMm: sagOf(m) })),
          breakingMassG: null,
        });
        expect(youngMPa.value / young).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('spread', () => {
  test('a height read 2 % off makes the modulus 6 % and the strength 4 % uncertain', () => {
    const { youngMPa, strengthMPa } = benchTest({
      ...FLAT,
      bar: { kind: 'flat', widthMm: exact(10), heightMm: { value: 5, sd: 0.1 } },
    });
    expect(youngMPa.sd / youngMPa.value).toBeCloseTo(0.06, 9);
    expect((strengthMPa?.sd ?? 0) / (strengthMPa?.value ?? 1)).toBeCloseTo(0.04, 9);
  });

  test('a diameter 1 % off counts four times in the modulus of a round bar, the span three times', () => {
    const bar = { kind: 'round', diameterMm: { value: 5, sd: 0.05 } } as const;
    const { youngMPa } = benchTest({ ...FLAT, bar, spanMm: { value: 100, sd: 1 } });
    expect(youngMPa.sd / youngMPa.value).toBeCloseTo(Math.hypot(0.04, 0.03), 9);
  });

  test('of many readings of one bar two thirds hold the truth within one standard deviation', () => {
    const sd = 0.01;
    let state = 7;
    const uniform = () => {
      state = (state * 16_807) % 2_147_483_647;
      return state / 2_147_483_647;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const trials = 2000;
    const holding = Array.from({ length: trials }, () => {
      const sags = FLAT.sags.map(({ massG, sagMm }) => ({ massG, sagMm: sagMm + sd * normal() }));
      const { youngMPa } = benchTest({ ...FLAT, sags, sagSdMm: sd, breakingMassG: null });
      return Math.abs(youngMPa.value - 2500) <= youngMPa.sd;
    }).filter(Boolean).length;
    // The larger of scatter and reading is taken, so it may hold the truth more often than 68 in 100, never less.
    expect(holding / trials).toBeGreaterThan(0.66);
    expect(holding / trials).toBeLessThan(0.8);
  });
});

test('what lessens the trust is said', () => {
  const { cautions } = benchTest({ ...FLAT, spanMm: exact(60), sags: FLAT.sags.slice(0, 1), breakingMassG: null });
  expect(cautions.join(' ')).toMatch(/12 heights.*fewer than three.*body warmth/);
});

describe('refused', () => {
  test.each<[string, Partial<BenchTest>, string]>([
    ['a bar of no height', { bar: { kind: 'flat', widthMm: exact(10), heightMm: exact(0) } }, 'bar.heightMm'],
    ['a size less sure than itself', { bar: { kind: 'round', diameterMm: { value: 5, sd: 5 } } }, 'bar.diameterMm'],
    ['a span of 3 heights', { spanMm: exact(15) }, 'spanMm'],
    ['no weight', { sags: [] }, 'sags'],
    ['a weight of nothing', { sags: [{ massG: 0, sagMm: 1 }] }, 'sags.0.massG'],
    ['a bar that rises', { sags: [{ massG: 100, sagMm: -0.1 }] }, 'sags.0.sagMm'],
    ['a sag of a fifth of the span', { sags: [{ massG: 100, sagMm: 20 }] }, 'sags.0.sagMm'],
    ['broken under less than it bore', { breakingMassG: exact(300) }, 'breakingMassG'],
    ['a sag that is no number', { sags: [{ massG: 100, sagMm: Number.NaN }] }, 'sags.0.sagMm'],
  ])('%s', (_, wrong, path) => {
    const refused = (() => {
      try {
        return benchTest({ ...FLAT, ...wrong });
      } catch (error) {
        return error;
      }
    })();
    expect(refused).toBeInstanceOf(InputError);
    expect(refused).toMatchObject({ path });
  });
});

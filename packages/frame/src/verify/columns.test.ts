/**
 * Buckling of columns: Euler's pi^2 E I / (K L)^2 for three ends; with shear, Engesser's P_E / (1 + P_E / k G A) (S. P.
 * Timoshenko and J. M. Gere, Theory of Elastic Stability, 1961, section 2.17). Each column is one member.
 */
import { describe, expect, test } from 'vitest';
import { A, D, E, G, I, solveOne, wireAlongX } from './wire.ts';

const ALL = ['x', 'y', 'z', 'rx', 'ry', 'rz'];
const HINGED = { n0: ['x', 'y', 'z', 'rx'], n1: ['y', 'z'] };
const P = 10;

function factor(lengthMm: number, supports: object, more: object = {}): number | null | undefined {
  const loads = { push: { n1: [-P, 0, 0, 0, 0, 0] } };
  return solveOne(wireAlongX([0, lengthMm], { supports, loads, buckling: true, ...more })).criticalFactor;
}

/** A cubic piece of l in a half wave of K L is stiff by (pi l / K L)^4 / 720; a fifth is added for the next term. */
const cubicError = (K: number): number => ((Math.PI / (8 * K)) ** 4 / 720) * 1.2;

describe('Euler column of 60 mm, one member: as good as eight cubic pieces can be', () => {
  test.each([
    ['hinged at both ends, K = 1', 1, HINGED],
    ['clamped at both ends, K = 0.5', 0.5, { n0: ALL, n1: ['y', 'z', 'rx', 'ry', 'rz'] }],
    ['flagpole, K = 2', 2, { n0: ALL }],
  ])('%s', (_, K, supports) => {
    const euler = (Math.PI ** 2 * E * I) / (K * 60) ** 2 / P;
    expect(Math.abs((factor(60, supports) ?? 0) / euler - 1)).toBeLessThan(cubicError(K));
    expect(cubicError(K)).toBeLessThan(1e-3);
  });
});

test('a stout hinged column with shear: Engesser, within 0.1 %', () => {
  const L = 8;
  const shearArea = ((6 * 1.3) / (7 + 6 * 0.3)) * A;
  const euler = (Math.PI ** 2 * E * I) / L ** 2;
  const engesser = euler / (1 + euler / (G * shearArea)) / P;
  const found = factor(L, HINGED, { beam: 'timoshenko' }) ?? 0;
  expect(Math.abs(found / engesser - 1)).toBeLessThan(1e-3);
  expect(engesser).toBeLessThan(0.95 * (euler / P));
});

test('pulled, bent or twisted, a wire has nothing to buckle: null', () => {
  for (const load of [
    [P, 0, 0, 0, 0, 0],
    [0, P, 0, 0, 0, 0],
    [0, 0, 0, P, 0, 0],
  ]) {
    const loads = { one: { n1: load } };
    expect(solveOne(wireAlongX([0, 60], { supports: { n0: ALL }, loads, buckling: true })).criticalFactor).toBeNull();
  }
});

test('a weak brace in the middle raises the load, a stiff one to the second mode: 4 times (within 0.1 %)', () => {
  const brace = (k: number) =>
    solveOne(
      wireAlongX([0, 30, 60], {
        supports: { n0: ['x', 'y', 'z', 'rx'], n2: ['y', 'z'] },
        springs: { brace: { from: 'n1', to: null, k: [0, k, k, 0, 0, 0] } },
        loads: { push: { n2: [-P, 0, 0, 0, 0, 0] } },
        buckling: true,
      }),
    ).criticalFactor ?? 0;
  const euler = (Math.PI ** 2 * E * I) / 60 ** 2 / P;
  expect(brace(0) / euler).toBeCloseTo(1, 3);
  expect(brace(10) / euler).toBeGreaterThan(1.5);
  expect(brace(1e4) / (4 * euler)).toBeCloseTo(1, 2);
});

test(`a sleeve that bears braces the column: ${D} mm wire bowed against it buckles later than without`, () => {
  const model = (clearanceMm: number) =>
    wireAlongX([0, 30, 60], {
      nodes: { n0: [0, 0, 0], n1: [30, 0, 0], n2: [60, 0, 0], wall: [30, 0, 0] },
      supports: { n0: ['x', 'y', 'z', 'rx'], n2: ['y', 'z'], wall: ALL },
      sleeves: { s: { inner: 'n1', outer: 'wall', axis: [1, 0, 0], clearanceMm, k: 1e4 } },
      loads: { push: { n1: [0, 5, 0, 0, 0, 0], n2: [-P, 0, 0, 0, 0, 0] } },
      buckling: true,
    });
  const free = solveOne(model(10)).criticalFactor ?? 0;
  const borne = solveOne(model(0.05)).criticalFactor ?? 0;
  expect(borne).toBeGreaterThan(1.2 * free);
});

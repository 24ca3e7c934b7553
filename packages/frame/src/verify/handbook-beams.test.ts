/**
 * Beams of any handbook of strength of materials (Roark's Formulas for Stress and Strain, table of beams; torsion of a
 * round bar): closed forms, which a direct solver must meet to rounding (1e-9).
 */
import { describe, expect, test } from 'vitest';
import { A, at, D, E, G, I, J, solveOne, wireAlongX } from './wire.ts';

const ALL = ['x', 'y', 'z', 'rx', 'ry', 'rz'];
const near = (found: number, expected: number) => expect(Math.abs(found / expected - 1)).toBeLessThan(1e-9);

describe('cantilever of length L, end load', () => {
  const [P, L] = [10, 10];
  const solve = (load: number[]) =>
    solveOne(wireAlongX([0, L], { supports: { n0: ALL }, loads: { one: { n1: load } } }));

  test('side force: tip P L^3 / 3 E I, slope P L^2 / 2 E I, stress 32 P L / pi d^3', () => {
    const { displacements, members, reactions } = solve([0, P, 0, 0, 0, 0]);
    near(at(displacements, 'n1', 1), (P * L ** 3) / (3 * E * I));
    near(at(displacements, 'n1', 5), (P * L ** 2) / (2 * E * I));
    near(members.m0?.peakStressMPa ?? 0, (32 * P * L) / (Math.PI * D ** 3));
    near(at(reactions, 'n0', 1), -P);
    near(at(reactions, 'n0', 5), -P * L);
  });

  test('side force along z bends the other way about y', () => {
    const { displacements } = solve([0, 0, P, 0, 0, 0]);
    near(at(displacements, 'n1', 2), (P * L ** 3) / (3 * E * I));
    near(at(displacements, 'n1', 4), (-P * L ** 2) / (2 * E * I));
  });

  test('pull: P L / E A, and N is negative at from in tension', () => {
    const { displacements, members } = solve([P, 0, 0, 0, 0, 0]);
    near(at(displacements, 'n1', 0), (P * L) / (E * A));
    near(members.m0?.from[0] ?? 0, -P);
    near(members.m0?.to[0] ?? 0, P);
  });

  test('twist: T L / G J, shear stress 16 T / pi d^3 seen as von Mises', () => {
    const T = 20;
    const { displacements, members } = solve([0, 0, 0, T, 0, 0]);
    near(at(displacements, 'n1', 3), (T * L) / (G * J));
    near(members.m0?.peakStressMPa ?? 0, (Math.sqrt(3) * 16 * T) / (Math.PI * D ** 3));
  });
});

test('fixed and guided: P L^3 / 12 E I, moment P L / 2', () => {
  const [P, L] = [10, 10];
  const supports = { n0: ALL, n1: ['x', 'z', 'rx', 'ry', 'rz'] };
  const { displacements, members } = solveOne(
    wireAlongX([0, L], { supports, loads: { one: { n1: [0, P, 0, 0, 0, 0] } } }),
  );
  near(at(displacements, 'n1', 1), (P * L ** 3) / (12 * E * I));
  near(Math.abs(members.m0?.to[4] ?? 0), (P * L) / 2);
});

test('both ends fixed, force in the middle: P L^3 / 192 E I, moment P L / 8', () => {
  const [P, L] = [10, 20];
  const { displacements, reactions } = solveOne(
    wireAlongX([0, L / 2, L], { supports: { n0: ALL, n2: ALL }, loads: { one: { n1: [0, P, 0, 0, 0, 0] } } }),
  );
  near(at(displacements, 'n1', 1), (P * L ** 3) / (192 * E * I));
  near(Math.abs(at(reactions, 'n2', 5)), (P * L) / 8);
});

/**
 * Portal with fixed feet, side load at beam level. A published worked example (kip, inch, ksi): foot 61.3 and knee
 * 43.7 ft-kip, vertical reaction 2.9 kip, sway 0.90 in; and its closed form, n = I_b h / (I_c L): foot P h/2 (1+3n)/(1+6n), knee
 * P h/2 3n/(1+6n), V = 3 n P h / (L (1+6n)), sway P h^3/(12 E I_c) (3n+2)/(6n+1).
 */
import { expect, test } from 'vitest';
import { at, solveOne } from './wire.ts';

const ALL = ['x', 'y', 'z', 'rx', 'ry', 'rz'];

function portal(h: number, L: number, Ic: number, Ib: number, E: number, P: number, area: number) {
  const section = (I: number) => ({ shape: 'properties', A: area, Iy: I, Iz: I, J: 2 * I });
  const member = (from: string, to: string, name: string) => ({ from, to, section: name, material: 's' });
  return solveOne({
    nodes: { a: [0, 0, 0], b: [0, h, 0], c: [L, h, 0], d: [L, 0, 0] },
    materials: { s: { E, nu: 0.3 } },
    sections: { column: section(Ic), beam: section(Ib) },
    members: { left: member('a', 'b', 'column'), top: member('b', 'c', 'beam'), right: member('d', 'c', 'column') },
    supports: { a: ALL, d: ALL },
    loads: { side: { b: [P / 2, 0, 0, 0, 0, 0], c: [P / 2, 0, 0, 0, 0, 0] } },
  });
}

test('15 kip on 14 ft x 30 ft: the printed figures, half a unit of their last digit', () => {
  const { displacements, reactions, members } = portal(14 * 12, 30 * 12, 170, 301, 29000, 15, 1e7);
  expect(Math.abs(at(reactions, 'a', 5)) / 12).toBeCloseTo(61.3, 1);
  expect(Math.abs(members.top?.from[4] ?? 0) / 12).toBeCloseTo(43.7, 1);
  expect(Math.abs(at(reactions, 'a', 1))).toBeCloseTo(2.9, 1);
  expect(at(displacements, 'b', 0)).toBeCloseTo(0.9, 2);
});

test('wires of 1.6 mm under a beam of 3 mm: the closed form for stiff length (areas 1e9, so 1e-6)', () => {
  const [h, L, E, P] = [12, 20, 193000, 10];
  const [Ic, Ib] = [1.6, 3].map((d) => (Math.PI * d ** 4) / 64) as [number, number];
  const n = (Ib * h) / (Ic * L);
  const { displacements, reactions } = portal(h, L, Ic, Ib, E, P, 1e9);
  const sway = ((P * h ** 3) / (12 * E * Ic)) * ((3 * n + 2) / (6 * n + 1));
  expect(at(displacements, 'b', 0) / sway).toBeCloseTo(1, 6);
  expect(Math.abs(at(reactions, 'a', 5)) / (((P * h) / 2) * ((1 + 3 * n) / (1 + 6 * n)))).toBeCloseTo(1, 6);
  expect(Math.abs(at(reactions, 'a', 1)) / ((3 * n * P * h) / (L * (1 + 6 * n)))).toBeCloseTo(1, 6);
});

/** Frames that can move freely are refused by name; those that only a contact or a soft spring holds are solved. */
import { InputError } from '@bonewright/fault';
import { describe, expect, test } from 'vitest';
import { readFrame, solveFrame } from '../index.ts';
import { onlyLoad } from '../verify/wire.ts';

const ALL = ['x', 'y', 'z', 'rx', 'ry', 'rz'];
const WIRE = {
  materials: { steel: { E: 193000, nu: 0.3 } },
  sections: { wire: { shape: 'round', od: 1.6 }, hinge: { shape: 'properties', A: 1, Iy: 0, Iz: 0, J: 0 } },
};
const member = (from: string, to: string, section = 'wire') => ({ from, to, section, material: 'steel' });
const solve = (model: object) => solveFrame(readFrame({ ...WIRE, ...model }));
const solveOne = (model: object) => onlyLoad(readFrame({ ...WIRE, ...model }));

function refusal(model: object): string {
  try {
    solve(model);
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  throw new Error('it was solved');
}

const BAR = { nodes: { A: [0, 0, 0], B: [10, 0, 0] }, members: { m: member('A', 'B') } };
const PUSH = { loads: { push: { B: [0, 0, -10, 0, 0, 0] } } };

describe('a frame that can move freely names a node and the direction', () => {
  test.each([
    ['along x', { A: ['y', 'z', 'rx', 'ry', 'rz'] }, /node "[AB]" from moving along x/],
    ['about its own axis', { A: ['x', 'y', 'z'], B: ['y', 'z'] }, /node "[AB]" from turning about x/],
    ['not held at all', {}, /nothing stops node "[AB]"/],
  ])('%s', (_, supports, words) => {
    expect(refusal({ ...BAR, ...PUSH, supports })).toMatch(words);
  });

  test('even under no load', () => {
    expect(refusal({ ...BAR, loads: { none: {} }, supports: {} })).toContain('nothing stops');
  });

  test('a node that hangs on nothing', () => {
    const model = { ...BAR, ...PUSH, supports: { A: ALL }, nodes: { ...BAR.nodes, stray: [0, 5, 0] } };
    expect(refusal(model)).toContain('"stray"');
  });

  test('a broken piece that hangs on nothing', () => {
    const nodes = { ...BAR.nodes, C: [20, 5, 0], D: [28, 5, 0] };
    const members = { m: member('A', 'B'), piece: member('C', 'D') };
    expect(refusal({ ...PUSH, nodes, members, supports: { A: ALL } })).toMatch(/node "[CD]"/);
  });

  test('a joint without turning stiffness: four hinged bars fold', () => {
    const nodes = { A: [0, 0, 0], B: [0, 10, 0], C: [10, 10, 0], D: [10, 0, 0] };
    const flat = ['z', 'rx', 'ry', 'rz'];
    const members = { a: member('A', 'B', 'hinge'), b: member('B', 'C', 'hinge'), c: member('C', 'D', 'hinge') };
    const supports = { A: ALL, D: ALL, B: flat, C: flat };
    expect(refusal({ ...PUSH, nodes, members, supports })).toMatch(/node "[BC]" from moving along x/);
  });

  test('a pin in sleeves only slides along and turns about its axis, wherever it bears', () => {
    const nodes = { A: [0, 0, 0], B: [10, 0, 0], P: [0, 0, 0], Q: [10, 0, 0] };
    const sleeve = (inner: string, outer: string) => ({ inner, outer, axis: [1, 0, 0], clearanceMm: 0.1, k: 1e4 });
    const message = refusal({
      nodes,
      members: { tube: member('A', 'B'), pin: member('P', 'Q') },
      sleeves: { p: sleeve('P', 'A'), q: sleeve('Q', 'B') },
      supports: { A: ALL },
      loads: { side: { P: [0, 5, 0, 0, 0, 0], Q: [0, 5, 0, 0, 0, 0] } },
    });
    expect(message).toMatch(/node "[PQ]" from (moving along|turning about) x/);
  });
});

describe('held by contacts only', () => {
  /** A bar on rollers along x, a stop at each end 0.3 mm off. */
  const slider = (forceN: number) => ({
    ...BAR,
    nodes: { ...BAR.nodes, left: [0, 0, 0], right: [10, 0, 0] },
    contacts: {
      left: { from: 'left', to: 'A', normal: [1, 0, 0], gapMm: 0.3, k: 1000 },
      right: { from: 'B', to: 'right', normal: [1, 0, 0], gapMm: 0.3, k: 1000 },
    },
    supports: { A: ['y', 'z', 'rx', 'ry', 'rz'], left: ALL, right: ALL },
    loads: { push: { A: [forceN, 0, 0, 0, 0, 0] } },
  });

  test('pushed until a stop bears: gap + P / k', () => {
    const { displacements, contacts } = solveOne(slider(20));
    expect(displacements.B?.[0]).toBeCloseTo(0.3 + 20 / 1000, 9);
    expect(contacts.right?.forceN).toBeCloseTo(20, 9);
    expect(contacts.left).toMatchObject({ forceN: 0 });
  });

  test('not pushed, it lies loose between the stops: refused', () => {
    expect(refusal(slider(0))).toMatch(/along x under load "push"/);
  });

  test('pressed against one stop, loose before another that it does not reach: refused, whichever comes first', () => {
    const across = { from: 'left', to: 'A', normal: [0, 1, 0], gapMm: 0.3, k: 1000 };
    const along = { from: 'B', to: 'right', normal: [1, 0, 0], gapMm: 0.3, k: 1000 };
    const loose = { ...slider(20), supports: { A: ['z', 'rx', 'ry', 'rz'], left: ALL, right: ALL } };
    for (const contacts of [
      { across, along },
      { along, across },
    ]) {
      expect(refusal({ ...loose, contacts })).toContain('along y');
    }
  });

  test('pushed away from its only stop: refused', () => {
    const { contacts, ...rest } = slider(-20);
    expect(refusal({ ...rest, contacts: { right: contacts.right } })).toContain('along x');
  });

  test('a gap below 0 is a press fit: k overlap without any load', () => {
    const result = solveOne({
      ...slider(0),
      contacts: {
        left: { from: 'left', to: 'A', normal: [1, 0, 0], gapMm: -0.1, k: 1000 },
        right: { from: 'B', to: 'right', normal: [1, 0, 0], gapMm: -0.1, k: 1000 },
      },
    });
    // The bar is 2.4e4 N/mm stiff, in series with both contacts.
    const bar = (193000 * Math.PI * 0.64) / 10;
    expect(result.contacts.left?.forceN).toBeCloseTo(0.2 / (2 / 1000 + 1 / bar), 9);
  });
});

test('a sleeve where only one motion is left: its two directions measure the same, and it is solved', () => {
  const { displacements } = solveOne({
    nodes: { A: [0, 0, 0], B: [0, 0, 2.6], tip: [0, -1.3, 0], wall: [0, -1.3, 0] },
    members: { m: member('A', 'B') },
    rigids: { tip: { from: 'B', to: 'tip' } },
    sleeves: { s: { inner: 'tip', outer: 'wall', axis: [1, -1, 7], clearanceMm: 0, k: 2000 } },
    supports: { A: ALL, tip: ['x', 'y'], B: ['x'], wall: ALL },
    loads: { down: { tip: [0, 0, -3, 0, 0, 0] } },
  });
  expect(displacements.tip?.[2]).toBeLessThan(0);
});

describe('stiffness far apart', () => {
  test('a bar held along x by a spring of a millionth of a newton a millimetre', () => {
    const k = 1e-6;
    const result = solveOne({
      ...BAR,
      supports: { A: ['y', 'z', 'rx', 'ry', 'rz'] },
      springs: { soft: { from: 'A', to: null, k: [k, 0, 0, 0, 0, 0] } },
      loads: { pull: { B: [1e-6, 0, 0, 0, 0, 0] } },
    });
    expect(result.displacements.A?.[0]).toBeCloseTo(1, 9);
    expect((result.members.m?.to[0] ?? 0) / 1e-6).toBeCloseTo(1, 9);
  });

  test('a member a million times stiffer than its neighbours carries the right force, skew in space', () => {
    const nodes = { A: [0, 0, 0], B: [5, 3, 1], C: [11, 7, -2], D: [14, 13, 4] };
    const members = { a: member('A', 'B'), stiff: member('B', 'C', 'wall'), c: member('C', 'D') };
    const sections = { ...WIRE.sections, wall: { shape: 'round', od: 60 } };
    const force = [3, -2, 5, 0, 0, 0];
    const result = solveOne({ nodes, members, sections, supports: { A: ALL }, loads: { one: { D: force } } });
    // Statics alone: the member's end carries the force, whatever its stiffness.
    expect(Math.hypot(...(result.members.stiff?.to.slice(0, 3) ?? []))).toBeCloseTo(Math.hypot(...force), 9);
  });
});

test('a spring at a support: what it passes on is the reaction, from either end', () => {
  for (const ends of [
    { from: 'wall', to: 'A' },
    { from: 'A', to: 'wall' },
  ]) {
    const { reactions, displacements } = solveOne({
      ...BAR,
      nodes: { ...BAR.nodes, wall: [0, 0, 0] },
      springs: { grip: { ...ends, k: [50, 60, 70, 800, 900, 1000] } },
      supports: { wall: ALL },
      loads: { one: { A: [3, -2, 5, 4, 6, 8] } },
    });
    [-3, 2, -5, -4, -6, -8].forEach((value, k) => {
      expect(reactions.wall?.[k]).toBeCloseTo(value, 9);
    });
    expect(displacements.A?.[1]).toBeCloseTo(-2 / 60, 12);
  }
});

describe('rigids', () => {
  test('a chain of rigids is one body: the far end moves by turn times lever', () => {
    const result = solveOne({
      nodes: { A: [0, 0, 0], B: [10, 0, 0], C: [10, 4, 0], D: [10, 4, 3] },
      members: { m: member('A', 'B') },
      rigids: { one: { from: 'B', to: 'C' }, two: { from: 'C', to: 'D' } },
      supports: { A: ALL },
      loads: { twist: { D: [0, 0, 7, 0, 0, 0] } },
    });
    const [x = 0, y = 0, z = 0, rx = 0, ry = 0, rz = 0] = result.displacements.B ?? [];
    const expected = [x + ry * 3 - rz * 4, y - rx * 3, z + rx * 4, rx, ry, rz];
    expected.forEach((value, k) => {
      expect(result.displacements.D?.[k]).toBeCloseTo(value, 12);
    });
    expect(result.members.m?.from[3]).toBeCloseTo(-7 * 4, 9);
  });

  test('a table on three legs that follow, over-held in its plane: reactions by statics, the spare ones shared', () => {
    const result = solveOne({
      nodes: { top: [1, 1, 5], a: [0, 0, 0], b: [4, 0, 0], c: [0, 4, 0] },
      rigids: {
        a: { from: 'top', to: 'a' },
        b: { from: 'top', to: 'b' },
        c: { from: 'top', to: 'c' },
      },
      supports: { a: ['x', 'y', 'z'], b: ['x', 'y', 'z'], c: ['x', 'y', 'z'] },
      loads: { weight: { top: [0, 0, -12, 0, 0, 0] } },
    });
    const upward = ['a', 'b', 'c'].map((leg) => result.reactions[leg]?.[2]);
    [6, 3, 3].forEach((value, i) => {
      expect(upward[i]).toBeCloseTo(value, 9);
    });
    expect(result.displacements.top).toEqual([0, 0, 0, 0, 0, 0]);
  });
});

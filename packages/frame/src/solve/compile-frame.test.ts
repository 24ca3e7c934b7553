/** The compiled frame: several sets of supports, several frames at once, figures rewritten. */
import { InputError } from '@bonewright/fault';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryFrame } from '../verify/arbitrary-frame.ts';
import { BASE, fixatorModel } from '../verify/fixator.ts';
import { compileFrame } from './compile-frame.ts';
import { solveFrame } from './solve-frame.ts';

const ALL = ['x', 'y', 'z', 'rx', 'ry', 'rz'] as const;
const SETS = {
  ball: { proximal: ['x', 'y', 'z', 'rx'], distal: ['y', 'z'] },
  guided: { proximal: ALL, distal: ['y', 'z', 'rx', 'ry', 'rz'] },
} as const;
const MODEL = {
  ...fixatorModel(BASE),
  loads: {
    ball: { distal: [-10, 0, 0, 0, 0, 5] },
    guided: { distal: [-10, 0, 0, 0, 0, 0], 'column 1 5': [0, 1, 2, 0, 0, 0] },
  },
} as const;

test('load cases under different supports give what each frame gives by itself', () => {
  const frame = compileFrame(MODEL, { supportSets: SETS, supportSetOf: { guided: 'guided' } });
  frame.solve();
  frame.loads.forEach((load, i) => {
    const supports = load === 'guided' ? SETS.guided : SETS.ball;
    const alone = solveFrame({ ...MODEL, supports }).loads[load]?.displacements ?? {};
    frame.nodes.forEach((node, n) => {
      const at = (i * frame.nodes.length + n) * 6;
      alone[node]?.forEach((value, k) => {
        expect(frame.outputs.displacements[at + k]).toBeCloseTo(value, 10);
      });
    });
  });
});

test('frames take turns in the shared memory: each still gives its own bits', () => {
  fc.assert(
    fc.property(arbitraryFrame({ gaps: true }), arbitraryFrame({ gaps: true }), (a, b) => {
      const alone = [a, b].map((model) => {
        const frame = compileFrame(model);
        frame.solve();
        return frame.outputs.memberEnds.slice();
      });
      const together = [compileFrame(a), compileFrame(b)];
      for (const frame of [...together, ...together]) frame.solve();
      expect(together.map((frame) => frame.outputs.memberEnds)).toEqual(alone);
    }),
    { numRuns: 20 },
  );
});

test('a node moved gives what a fresh compile of the moved frame gives, and moved back the first again', () => {
  const frame = compileFrame(MODEL, { supportSets: SETS });
  frame.solve();
  const before = frame.outputs.displacements.slice();
  const at = frame.nodes.indexOf('column 1 5') * 3;
  frame.inputs.nodesMm[at + 1]! += 0.7;
  frame.solve();
  const nodes = { ...MODEL.nodes, 'column 1 5': [5, 12.7, 0] as const };
  const fresh = compileFrame({ ...MODEL, nodes }, { supportSets: SETS });
  fresh.solve();
  expect(frame.outputs.displacements).toEqual(fresh.outputs.displacements);
  frame.inputs.nodesMm[at + 1]! -= 0.7;
  frame.solve();
  frame.outputs.displacements.forEach((value, i) => {
    expect(value).toBeCloseTo(before[i] ?? Number.NaN, 12);
  });
});

test('a sleeve turned to another axis measures other motions: what a fresh compile gives, within 1e-9', () => {
  const nodes = { ...MODEL.nodes, wall: [15, 12, 0] } as const;
  const turned = (axis: readonly [number, number, number]) => ({
    ...MODEL,
    nodes,
    sleeves: { s: { inner: 'column 1 15', outer: 'wall', axis, clearanceMm: 0.001, k: 3000 } },
  });
  const supportSets = { held: { ...SETS.ball, wall: ALL } };
  const frame = compileFrame(turned([1, 0, 0]), { supportSets });
  for (const axis of [
    [0, 0, 1],
    [0, 1, 0],
    [1, 2, -1],
    [1, 0, 0],
  ] as const) {
    frame.inputs.sleeveAxis.set(axis);
    frame.solve();
    const fresh = compileFrame(turned(axis), { supportSets });
    fresh.solve();
    expect(fresh.outputs.sleeveForceN.some((force) => force > 0)).toBe(true);
    frame.outputs.memberEnds.forEach((value, i) => {
      expect(Math.abs(value - fresh.outputs.memberEnds[i]!)).toBeLessThan(1e-9 * (1 + Math.abs(value)));
    });
  }
});

describe('refused', () => {
  test('a support set that is not there', () => {
    expect(() => compileFrame(MODEL, { supportSets: SETS, supportSetOf: { ball: 'boll' } })).toThrow(InputError);
  });

  test('sets that differ on a node that follows another', () => {
    const rigids = { r: { from: 'distal', to: 'column 1 15' } };
    const supportSets = { a: SETS.ball, b: { ...SETS.ball, 'column 1 15': ['z'] } } as const;
    expect(() => compileFrame({ ...MODEL, rigids }, { supportSets })).toThrow(/follows another/);
  });

  test('a member that lost its length, and after it is mended the frame solves again', () => {
    const frame = compileFrame(MODEL, { supportSets: SETS });
    frame.solve();
    const before = frame.outputs.displacements.slice();
    const from = frame.nodes.indexOf('bone 5') * 3;
    const kept = frame.inputs.nodesMm.slice();
    frame.inputs.nodesMm.copyWithin(from, frame.nodes.indexOf('bone 15') * 3, frame.nodes.indexOf('bone 15') * 3 + 3);
    expect(() => frame.solve()).toThrow(/no length/);
    frame.inputs.nodesMm.set(kept);
    frame.solve();
    expect(frame.outputs.displacements).toEqual(before);
  });

  test('any frame without supports, whatever hangs on it', () => {
    fc.assert(
      fc.property(arbitraryFrame(), (model) => {
        expect(() => solveFrame({ ...model, supports: {} })).toThrow(InputError);
      }),
      { numRuns: 40 },
    );
  });
});

/** What holds of every frame whatever its numbers: balance, reciprocity, symmetry, energy, monotony, superposition. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solveFrame } from '../index.ts';
import type { FrameModel, LoadResult, Vec3, Vec6 } from '../model/frame-model.ts';
import { arbitraryFrame } from './arbitrary-frame.ts';
import { memberEnergy } from './member-energy.ts';
import { multiply, rotation, turned } from './turned-frame.ts';

const RUNS = { numRuns: 60 };
/** Share of the largest figure of its kind that rounding may take. */
const ROUNDING = 1e-9;

const only = (model: FrameModel, load = 'a'): LoadResult => {
  const result = solveFrame(model).loads[load];
  if (!result) throw new Error(`no load case ${load}`);
  return result;
};
const work = (loads: FrameModel['loads'][string], { displacements }: LoadResult): number =>
  Object.entries(loads).reduce((sum, [node, six]) => sum + dot(six, displacements[node] ?? []), 0);
const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0);
const largest = (...lists: readonly (readonly number[])[]): number => Math.max(0, ...lists.flat().map(Math.abs));

describe('balance', () => {
  test('reactions hold the loads, forces and moments, contacts and sleeves bearing or not', () => {
    fc.assert(
      fc.property(arbitraryFrame({ gaps: true }), (model) => {
        const { reactions } = only(model);
        const forces = [...Object.entries(model.loads.a ?? {}), ...Object.entries(reactions)];
        const moved = forces.map(([node, six]) => aboutOrigin(model.nodes[node] ?? [0, 0, 0], six));
        const total = [0, 1, 2, 3, 4, 5].map((k) => moved.reduce((sum, six) => sum + (six[k] ?? 0), 0));
        expect(largest(total)).toBeLessThanOrEqual(ROUNDING * largest(...moved));
      }),
      RUNS,
    );
  });

  test('every member is in balance by itself', () => {
    fc.assert(
      fc.property(arbitraryFrame({ gaps: true }), (model) => {
        for (const [name, { from, to }] of Object.entries(only(model).members)) {
          const L = lengthOf(model, name);
          const [n1, y1, z1, t1, my1, mz1] = from;
          const [n2, y2, z2, t2, my2, mz2] = to;
          const left = [n1 + n2, y1 + y2, z1 + z2, (t1 + t2) / L, (my1 + my2 - z2 * L) / L, (mz1 + mz2 + y2 * L) / L];
          expect(largest(left)).toBeLessThanOrEqual(ROUNDING * largest(from, to));
        }
      }),
      RUNS,
    );
  });
});

test('reciprocity (Maxwell and Betti): the work of one load in the motion of the other is the same both ways', () => {
  fc.assert(
    fc.property(arbitraryFrame(), (model) => {
      const [ab, ba] = [work(model.loads.a ?? {}, only(model, 'b')), work(model.loads.b ?? {}, only(model, 'a'))];
      const size = Math.sqrt(work(model.loads.a ?? {}, only(model, 'a')) * work(model.loads.b ?? {}, only(model, 'b')));
      expect(Math.abs(ab - ba)).toBeLessThanOrEqual(ROUNDING * size);
    }),
    RUNS,
  );
});

test('energy: half the work of the load is what members and springs store (M linear, N, V, T constant along a member)', () => {
  fc.assert(
    fc.property(arbitraryFrame(), (model) => {
      const result = only(model);
      const members = Object.keys(model.members).reduce((sum, name) => sum + memberEnergy(model, name, result), 0);
      const springs = Object.values(model.springs).reduce((sum, { from, to, k }) => {
        const [a, b] = [result.displacements[from] ?? [], result.displacements[to ?? ''] ?? []];
        return sum + k.reduce((part, stiffness, i) => part + (stiffness * ((b[i] ?? 0) - (a[i] ?? 0)) ** 2) / 2, 0);
      }, 0);
      const done = work(model.loads.a ?? {}, result) / 2;
      expect(Math.abs(done - members - springs)).toBeLessThanOrEqual(1e-7 * done);
    }),
    RUNS,
  );
});

describe('symmetry', () => {
  const turn = rotation([1, 2, -3], 1.1);
  const cases: readonly (readonly [string, readonly (readonly number[])[], number])[] = [
    ['turned about a skew axis', turn, 1],
    [
      'mirrored in x',
      [
        [-1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      -1,
    ],
    [
      'mirrored in a skew plane',
      multiply(turn, [
        [1, 0, 0],
        [0, -1, 0],
        [0, 0, 1],
      ]),
      -1,
    ],
  ];
  test.each(cases)('the whole model %s: the motions turn with it', (_, by, handed) => {
    const shift = (v: readonly number[]): number[] => by.map((row) => dot(row, v));
    const six = (v: Vec6): Vec6 => {
      const [a = 0, b = 0, c = 0] = shift(v.slice(0, 3));
      const [d = 0, e = 0, f = 0] = shift(v.slice(3)).map((x) => x * handed);
      return [a, b, c, d, e, f];
    };
    fc.assert(
      fc.property(arbitraryFrame({ turnable: true, gaps: true }), (model) => {
        const before = only(model).displacements;
        const after = only(turned(model, shift, six)).displacements;
        for (const kind of [0, 3]) {
          const part = (v: Vec6 | undefined) => v?.slice(kind, kind + 3) ?? [];
          const size = largest(...Object.values(before).map(part));
          for (const node of Object.keys(model.nodes)) {
            const wanted = six(before[node] ?? [0, 0, 0, 0, 0, 0]);
            const misses = part(after[node]).map((x, k) => x - (part(wanted)[k] ?? 0));
            expect(largest(misses)).toBeLessThanOrEqual(1e-7 * size);
          }
        }
      }),
      RUNS,
    );
  });
});

test('more steel is never less stiff: a thicker wire never lets the load do more work', () => {
  fc.assert(
    fc.property(arbitraryFrame(), fc.double({ min: 1.01, max: 2, noNaN: true }), (model, factor) => {
      const thicker = {
        ...model,
        sections: { ...model.sections, thin: { shape: 'round', od: 0.9 * factor } as const },
      };
      const loads = model.loads.a ?? {};
      const [thin, thick] = [work(loads, only(model)), work(loads, only(thicker))];
      expect(thick).toBeLessThanOrEqual(thin * (1 + ROUNDING) + 1e-12);
    }),
    RUNS,
  );
});

test('without gaps twice the load moves everything twice as far', () => {
  fc.assert(
    fc.property(arbitraryFrame(), (model) => {
      const twice = Object.fromEntries(
        Object.entries(model.loads.a ?? {}).map(([node, [a, b, c, d, e, f]]): [string, Vec6] => [
          node,
          [2 * a, 2 * b, 2 * c, 2 * d, 2 * e, 2 * f],
        ]),
      );
      const [once, doubled] = [only(model), only({ ...model, loads: { a: twice } })];
      for (const node of Object.keys(model.nodes)) {
        const misses = once.displacements[node]?.map((x, k) => 2 * x - (doubled.displacements[node]?.[k] ?? 0)) ?? [];
        expect(largest(misses)).toBeLessThanOrEqual(ROUNDING * largest(...Object.values(once.displacements)));
      }
    }),
    RUNS,
  );
});

const NO_CONTACT = { from: '', to: '', normal: [1, 0, 0], gapMm: 0, k: 0 } as const;

test('contacts and sleeves never pull, and push just when they overlap', () => {
  fc.assert(
    fc.property(arbitraryFrame({ gaps: true }), (model) => {
      for (const load of ['a', 'b']) {
        const { contacts, sleeves, displacements } = only(model, load);
        for (const [name, { openingMm, forceN }] of Object.entries(contacts)) {
          const { from, to, normal, gapMm, k } = model.contacts[name] ?? NO_CONTACT;
          const moved = dot(displacements[to] ?? [], normal) - dot(displacements[from] ?? [], normal);
          const opening = gapMm + moved / Math.hypot(...normal);
          expect(Math.abs(opening - openingMm)).toBeLessThan(1e-9 * (1 + Math.abs(opening)));
          expect(forceN).toBe(openingMm < 0 ? -k * openingMm : 0);
        }
        for (const [name, { offsetMm, forceN }] of Object.entries(sleeves)) {
          const { clearanceMm, k } = model.sleeves[name] ?? { clearanceMm: 0, k: 0 };
          expect(forceN).toBe(Math.max(0, k * (offsetMm - clearanceMm)));
        }
      }
    }),
    RUNS,
  );
});

function aboutOrigin(place: Vec3, six: Vec6): number[] {
  const [x, y, z] = place;
  const [fx, fy, fz, mx, my, mz] = six;
  return [fx, fy, fz, mx + y * fz - z * fy, my + z * fx - x * fz, mz + x * fy - y * fx];
}

function lengthOf(model: FrameModel, name: string): number {
  const { from, to } = model.members[name] ?? { from: '', to: '' };
  const [a, b] = [model.nodes[from] ?? [0, 0, 0], model.nodes[to] ?? [0, 0, 0]];
  return Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
}

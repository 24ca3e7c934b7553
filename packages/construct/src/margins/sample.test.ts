import { expect, test } from 'vitest';
import owl from '../../cases/solid/owl-tibiotarsus-tilted.json' with { type: 'json' };
import squirrel from '../../cases/solid/squirrel-tibia.json' with { type: 'json' };
import { assessConstruct } from '../assess.ts';
import type { Case } from '../model/case-file.ts';
import { nominalFigures } from '../model/figures.ts';
import { LOADS, type Plan } from '../model/plan.ts';
import { readCase } from '../read-case.ts';
import { draftOf } from './draft.ts';
import { drawnMargins } from './drawn-margins.ts';
import { inputsOf } from './inputs.ts';
import { percentile } from './sample.ts';

const usual = (file: unknown): Case => {
  const read = readCase(file);
  return { ...read, construct: { ...read.construct!, grip: 'usual' } };
};
const patientCase = usual(squirrel);
const construct = patientCase.construct!;
const assessed = (of: Case, samples: number, seed: number): Plan =>
  assessConstruct(of, of.construct!, { samples, seed });

test('the same case gives the same bytes, another seed others', () => {
  const once = JSON.stringify(assessed(patientCase, 20, 1));
  expect(JSON.stringify(assessed(patientCase, 20, 1))).toBe(once);
  expect(JSON.stringify(assessed(patientCase, 20, 2))).not.toBe(once);
});

test('percentiles stand in order and about the middle figure', () => {
  const { loads } = assessed(patientCase, 60, 1);
  for (const load of LOADS) {
    const { p05, p50, p95 } = loads[load].margin;
    expect(p05).toBeLessThan(p50);
    expect(p50).toBeLessThan(p95);
  }
});

test('percentile of sorted numbers lies between its neighbours', () => {
  const sorted = Float64Array.from([1, 2, 4, 8]);
  expect(percentile(sorted, 0)).toBe(1);
  expect(percentile(sorted, 50)).toBe(3);
  expect(percentile(sorted, 100)).toBe(8);
});

test('a load that the user typed is taken as it stands: its margin no longer moves with it', () => {
  const typed: Case = { ...patientCase, loads: { axialN: 5, bendingNmm: 50, torsionNmm: 25 } };
  const names = inputsOf(typed, construct).map((i) => i.words);
  expect(names).not.toContain('bending load');
  const width = ({ loads }: Plan) => loads['bending-in-plane'].margin.p95 / loads['bending-in-plane'].margin.p05;
  expect(width(assessed(typed, 100, 1))).toBeLessThan(width(assessed(patientCase, 100, 1)));
});

test('a putty whose modulus was measured has no modulus to measure again', () => {
  const names = (of: Case) => inputsOf(of, of.construct!).map((i) => i.words);
  expect(names(patientCase)).not.toContain('modulus of the column');
  const { youngMPa: _, ...column } = patientCase.drawer.columns[0]!;
  expect(names({ ...patientCase, drawer: { ...patientCase.drawer, columns: [column] } })).toContain(
    'modulus of the column',
  );
});

/**
 * True inputs drawn from the stated spreads, the interval from other draws: nine in ten of the intervals must hold the
 * truth. Two intervals of 150 samples are each off by some 2.5 %, 120 truths by 2 %: three standard errors are 8 %.
 * `npm run bench construct` does 200 constructs at full count.
 */
test('of the 90 % intervals about nine in ten hold the truth', () => {
  let held = 0;
  let count = 0;
  [usual(squirrel), usual(owl)].forEach((of, which) => {
    const { loads } = assessed(of, 150, which);
    for (const truth of drawnMargins(of, of.construct!, { count: 60, seed: 50 + which })) {
      for (const load of LOADS) {
        const { p05, p95 } = loads[load].margin;
        count += 1;
        if (truth[load] >= p05 && truth[load] <= p95) held += 1;
      }
    }
  });
  expect(held / count).toBeGreaterThan(0.82);
  expect(held / count).toBeLessThan(0.98);
});

test('a tested putty has its own spread in place of the registry’s; without one it is exact', () => {
  const inputsWith = (column: object) => {
    const columns = patientCase.drawer.columns.map((each) => ({ ...each, youngMPa: 2500, yieldMPa: 20, ...column }));
    return inputsOf({ ...patientCase, drawer: { ...patientCase.drawer, columns } }, construct).map(
      ({ words }) => words,
    );
  };
  const tested = ['tested strength of the column', 'tested modulus of the column'];
  expect(inputsWith({ youngSdMPa: 130, yieldSdMPa: 0.8 })).toEqual(expect.arrayContaining(tested));
  expect(inputsWith({}).filter((words) => /(strength|modulus) of the column/.test(words))).toEqual([]);
});

test('a tested modulus drawn one standard deviation up is so much stiffer', () => {
  const columns = patientCase.drawer.columns.map((each) => ({ ...each, youngMPa: 2500, youngSdMPa: 125 }));
  const tested = { ...patientCase, drawer: { ...patientCase.drawer, columns } };
  const input = inputsOf(tested, construct).find(({ words }) => words === 'tested modulus of the column')!;
  const draft = draftOf(nominalFigures(tested, construct));
  const before = draft.figures.columns[0]!.youngMPa;
  input.move(draft, 1);
  // exp(0.05): 5.1 % where 5 % was measured, within the 1 % to which a spread is ever known.
  expect(draft.figures.columns[0]!.youngMPa / before).toBeCloseTo(1.05, 2);
});

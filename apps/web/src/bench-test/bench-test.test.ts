import { expect, test } from 'vitest';
import { START_DRAWER } from '../plan/drawer/start-set.ts';
import { answerOf, type BenchDraft, EMPTY_DRAFT, readBenchDraft } from './draft.ts';
import { withTested } from './tested-drawer.ts';

/** 10 by 5 mm over 100 mm; 1 N sags 0.08 mm at 2500 MPa. */
const TYPED: BenchDraft = {
  ...EMPTY_DRAFT,
  shape: 'flat',
  widthMm: '10',
  heightMm: '5,0',
  spanMm: '100',
  lengthSdMm: '0',
  sagSdMm: '0',
  hung: [
    { massG: '1019.716', sagMm: '0.8' },
    { massG: '', sagMm: '' },
  ],
};

test('typed with comma or point, empty rows left out: F L^3 / (48 I w) of the row', () => {
  expect(answerOf(TYPED).result?.youngMPa.value).toBeCloseTo(2500, 2);
});

test('nothing is said while readings are missing, and what is wrong where they cannot be', () => {
  expect(answerOf({ ...TYPED, spanMm: '' })).toEqual({ result: null, why: null });
  expect(answerOf({ ...TYPED, breakingG: '3400' })).toEqual({ result: null, why: null });
  expect(answerOf({ ...TYPED, spanMm: '12' }).why).toMatch(/span/);
});

test('a draft that this device kept comes back, anything else is an empty one', () => {
  expect(readBenchDraft(JSON.parse(JSON.stringify(TYPED)))).toEqual(TYPED);
  for (const kept of [null, 3, [], { hung: 'x' }]) expect(readBenchDraft(kept)).toEqual(EMPTY_DRAFT);
});

test('all columns of the tested putty carry its figures; those of another material keep theirs', () => {
  const acrylic = { id: 'acrylic 8', material: 'acrylic', diameterMm: 8 };
  const drawer = { ...START_DRAWER, columns: [...START_DRAWER.columns, acrylic] };
  const { columns } = withTested(drawer, 'putty 6', { youngMPa: 3100, yieldMPa: null });
  expect(columns.map(({ youngMPa, yieldMPa }) => [youngMPa, yieldMPa])).toEqual([
    [3100, undefined],
    [3100, undefined],
    [3100, undefined],
    [undefined, undefined],
  ]);
});

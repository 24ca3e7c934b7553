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
  const bar = { youngMPa: { value: 3100, sd: 150 }, yieldMPa: null };
  const { columns } = withTested(drawer, 'putty 6', bar);
  expect(columns.map(({ youngMPa, youngSdMPa, yieldMPa }) => [youngMPa, youngSdMPa, yieldMPa])).toEqual([
    [3100, 150, undefined],
    [3100, 150, undefined],
    [3100, 150, undefined],
    [undefined, undefined, undefined],
  ]);
  const broken = withTested(drawer, 'putty 6', { ...bar, yieldMPa: { value: 21, sd: 0.8 } });
  expect(broken.columns[0]).toMatchObject({ yieldMPa: 21, yieldSdMPa: 0.8 });
});

import { expect, test } from 'vitest';
import { checkEvent } from '../../events.ts';
import { foldCase } from '../../fold.ts';
import { foldPractice } from '../fold.ts';
import { type Entry, record, WIRE } from '../test/record.ts';
import { drawerOf, nextLot } from './drawer-of.ts';
import { stockWarnings } from './stock-words.ts';
import { usesToRecord } from './uses.ts';

const TODAY = '2026-11-25';
const wire = (itemId: string, lowAt: number | null = null) =>
  ['stock-described', { itemId, thing: WIRE, lowAt }] as const;
const came = (itemId: string, batch: string, amount: number, expires: string | null) =>
  ['stock-received', { itemId, batch, amount, expires }] as const;
const column = [
  'stock-described',
  { itemId: 'putty 6', thing: { use: 'column', material: 'epoxy-putty', diameterMm: 6 }, lowAt: null },
] as const;
const putty = [
  'stock-described',
  { itemId: 'putty', thing: { use: 'putty', material: 'epoxy-putty' }, lowAt: 40 },
] as const;
const tested = (batch: string, value: number) =>
  [
    'putty-tested',
    {
      itemId: 'putty',
      batch,
      youngMPa: { value, sd: 100 },
      yieldMPa: { value: 30, sd: 2 },
      testedAt: '2026-11-20T10:00:00Z',
    },
  ] as const;
const im = [
  'stock-described',
  { itemId: 'IM 1.0', thing: { use: 'im-pin', diameterMm: 1, material: 'steel-cold-worked' }, lowAt: null },
] as const;

test('a plan counts on what is not past its day; of two batches the one that expires first goes first', () => {
  const { stock } = foldPractice(
    record(
      wire('wire 1.0'),
      came('wire 1.0', 'old', 4, '2026-11-24'),
      came('wire 1.0', 'late', 3, '2028-01-31'),
      came('wire 1.0', 'soon', 2, TODAY),
    ),
  );
  expect(drawerOf(stock, TODAY).pins).toEqual([expect.objectContaining({ id: 'wire 1.0', diameterMm: 1, count: 5 })]);
  expect(nextLot(stock.items[0]!, TODAY)?.batch).toBe('soon');
  expect(nextLot(stock.items[0]!, '2026-11-26')?.batch).toBe('late');
});

test('columns carry the bench test of the tub that is mixed next, and none once that tub is used up', () => {
  const entries = [
    column,
    putty,
    came('putty', 'A', 50, '2026-12-31'),
    came('putty', 'B', 50, null),
    tested('A', 3000),
  ] as const;
  const youngOf = (...more: readonly Entry[]) =>
    drawerOf(foldPractice(record(...entries, ...more)).stock, TODAY).columns[0];
  expect(youngOf()).toMatchObject({ youngMPa: 3000, youngSdMPa: 100, yieldMPa: 30, yieldSdMPa: 2 });
  const emptied = ['stock-counted', { itemId: 'putty', batch: 'A', left: 0 }] as const;
  expect(youngOf(emptied)).not.toHaveProperty('youngMPa');
  expect(youngOf(emptied, tested('B', 2500))).toMatchObject({ youngMPa: 2500 });
});

test('low, empty, past its day and more used than counted in are said in words', () => {
  const { stock } = foldPractice(
    record(
      wire('wire 0.8', 3),
      came('wire 0.8', 'A', 3, null),
      wire('wire 1.0'),
      came('wire 1.0', 'B', 2, '2026-11-24'),
      putty,
      wire('plenty', 1),
      came('plenty', '', 9, null),
      ['stock-used', { itemId: 'plenty', batch: 'lost', amount: 1, forCase: 'case-0001', as: 'P1' }],
    ),
  );
  expect(stockWarnings(stock, TODAY).map(({ words }) => words)).toEqual([
    'wire 0.8: low, 3 left.',
    'wire 1.0: none left that may be used.',
    'wire 1.0: 2 of batch B past its day, 2026-11-24; it is not counted on.',
    'putty: none left that may be used.',
    'plenty: 1 of batch lost more used than was counted in; count it again.',
  ]);
});

const construct = {
  im: { drawerId: 'IM 1.0' },
  pins: [8, 20].map((sMm) => ({ drawerId: 'wire 1.0', sMm })),
  column: { drawerId: 'putty 6', clearanceMm: 4 },
};
const opened = {
  number: '26-001',
  species: 'hare',
  name: '',
  massG: 1400,
  weighedAt: null,
  ageClass: 'adult',
  sex: 'unknown',
  bone: 'tibia',
  side: 'left',
};

function operated(...entries: readonly (readonly [string, unknown])[]) {
  const all = [['case-opened', opened], ['construct-chosen', { construct, summary: null }], ...entries] as const;
  return foldCase(
    all.map(([kind, payload], i) =>
      checkEvent({
        schema: 1,
        id: `case-event-${i}`,
        caseId: 'case-0001',
        seq: i + 1,
        at: '2026-11-25T23:10:00Z',
        by: 'R. Fenn',
        kind,
        payload,
      }),
    ),
  );
}
const pinPlaced = (pin: number) => ['pin-placed', { pin, sMm: 10, aboutDeg: 0, tiltDeg: 0, cortices: 2 }] as const;
const mixed = (grams: number) => ['putty-mixed', { grams, at: '2026-11-25T23:20:00Z', workingMinutes: null }] as const;

test('pins placed, the IM pin and each mix of putty are taken from the batch that goes first; nothing twice', () => {
  const drawer = [
    wire('wire 1.0'),
    came('wire 1.0', 'W', 6, null),
    im,
    came('IM 1.0', 'I', 2, null),
    column,
    putty,
    came('putty', 'T', 80, null),
  ] as const;
  const state = operated(pinPlaced(1), pinPlaced(2), mixed(12));
  const due = usesToRecord(state, foldPractice(record(...drawer)).stock, TODAY);
  expect(due.map(({ as, itemId, batch, amount }) => [as, itemId, batch, amount])).toEqual([
    ['P1', 'wire 1.0', 'W', 1],
    ['P2', 'wire 1.0', 'W', 1],
    ['IM pin', 'IM 1.0', 'I', 1],
    ['putty, entry 5', 'putty', 'T', 12],
  ]);
  const entered = due.map((use) => ['stock-used', use] as const);
  const { stock } = foldPractice(record(...drawer, ...entered));
  expect(usesToRecord(state, stock, TODAY)).toEqual([]);
  expect(drawerOf(stock, TODAY)).toMatchObject({ pins: [{ count: 4 }], imPins: [{ count: 1 }] });
  // Taken back: the pin is in the drawer again; putty that was mixed is not, and the second mix comes on top.
  const after = operated(pinPlaced(1), pinPlaced(2), mixed(12), ['pin-taken-back', { pin: 2 }], mixed(5));
  expect(usesToRecord(after, stock, TODAY).map(({ as, amount }) => [as, amount])).toEqual([
    ['P2', 0],
    ['putty, entry 7', 5],
  ]);
});

test('a plan from another drawer takes nothing from this one', () => {
  expect(
    usesToRecord(operated(pinPlaced(1)), foldPractice(record(im)).stock, TODAY).map(({ itemId }) => itemId),
  ).toEqual(['IM 1.0']);
  expect(usesToRecord(operated(pinPlaced(1)), foldPractice([]).stock, TODAY)).toEqual([]);
});

const count = (left: number, insteadOf?: number) =>
  [
    'stock-counted',
    { itemId: 'wire 1.0', batch: 'W', left, ...(insteadOf === undefined ? {} : { insteadOf }) },
  ] as const;

test('a count made while a pin was used elsewhere keeps both, and asks for a new count until there is one', () => {
  const drawer = [wire('wire 1.0'), came('wire 1.0', 'W', 6, null)] as const;
  const used = ['stock-used', { itemId: 'wire 1.0', batch: 'W', amount: 1, forCase: 'case-0001', as: 'P1' }] as const;
  const crossed = foldPractice(record(...drawer, used, count(8, 6))).stock;
  expect(crossed.items[0]?.lots[0]?.left).toBe(7);
  expect(stockWarnings(crossed, TODAY)).toEqual([
    { verdict: 'stop', words: 'wire 1.0 of batch W: changed at two places at once, both taken; count it again.' },
  ]);
  const again = foldPractice(record(...drawer, used, count(8, 6), count(7, 7))).stock;
  expect(stockWarnings(again, TODAY)).toEqual([]);
  expect(foldPractice(record(...drawer, count(8, 6))).stock.items[0]?.lots[0]).toMatchObject({
    left: 8,
    isCrossed: false,
  });
});

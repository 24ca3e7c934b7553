import { checkPracticeEvent, drawerOf, foldPractice, PRACTICE, type PracticeEvent } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import type { NewPracticeEvent } from '../../sync/new-event.ts';
import { stockEntries } from './keep-in-stock.ts';
import { START_DRAWER } from './start-set.ts';

const TODAY = '2026-11-25';

/** The practice's record after these entries, one after another. */
function recorded(...entries: readonly NewPracticeEvent[]) {
  const head = { schema: 1, caseId: PRACTICE, at: '2026-11-25T23:10:00Z', by: 'T. Okafor' };
  return foldPractice(
    entries.map(
      (entry, i): PracticeEvent => checkPracticeEvent({ ...entry, ...head, id: `practice-${i}`, seq: i + 1 }),
    ),
  ).stock;
}
const first = stockEntries(START_DRAWER, recorded(), TODAY);

test('a drawer kept is the practice’s drawer, and kept again it says nothing more', () => {
  const stock = recorded(...first);
  expect(drawerOf(stock, TODAY)).toEqual(START_DRAWER);
  expect(stockEntries(START_DRAWER, stock, TODAY)).toEqual([]);
});

test.each([
  ['fewer than one batch holds', 2],
  ['fewer than the second alone', 9],
  ['more than there are', 30],
  ['none', 0],
])('a count over two batches is met: %s', (_, count) => {
  const more = { itemId: 'wire 0.6', batch: 'B', amount: 6, expires: '2027-01-31' };
  const before = [...first, { kind: 'stock-received', payload: more }] as const;
  const pins = START_DRAWER.pins.map((pin) => (pin.id === 'wire 0.6' ? { ...pin, count } : pin));
  const wanted = { ...START_DRAWER, pins };
  const entries = stockEntries(wanted, recorded(...before), TODAY);
  expect(entries.every(({ why }) => why !== undefined)).toBe(true);
  expect(drawerOf(recorded(...before, ...entries), TODAY)).toEqual(wanted);
});

test('a row taken out is withdrawn, a changed one described again; putty stays', () => {
  const putty = { itemId: 'putty', thing: { use: 'putty', material: 'epoxy-putty' }, lowAt: null } as const;
  const before = [...first, { kind: 'stock-described', payload: putty }] as const;
  const [gone, changed, ...pins] = START_DRAWER.pins;
  const wanted = { ...START_DRAWER, pins: [{ ...changed!, material: 'titanium' }, ...pins] };
  const after = recorded(...before, ...stockEntries(wanted, recorded(...before), TODAY));
  expect(after.items.some(({ id }) => id === gone!.id)).toBe(false);
  expect(after.items.some(({ id }) => id === 'putty')).toBe(true);
  expect(drawerOf(after, TODAY)).toEqual(wanted);
});

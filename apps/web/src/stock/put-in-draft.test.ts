import { emptyPractice, type Stock } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import { type PutInDraft, putInEntries, readPutIn } from './put-in-draft.ts';

const nothing: Stock = emptyPractice.stock;
const wire: PutInDraft = {
  ...readPutIn(null),
  use: 'smooth',
  diameter: '0,8',
  material: 'steel-cold-worked',
  amount: '6',
  batch: ' W-1 ',
  expires: '2027-03-31',
};
const thing = { use: 'pin', kind: 'smooth', material: 'steel-cold-worked', diameterMm: 0.8 } as const;
const held: Stock = { ...nothing, items: [{ id: 'my 0.8', thing, lowAt: 2, isDemonstration: false, lots: [] }] };

test('a new thing is described and named by what it is, then its batch comes in', () => {
  expect(putInEntries(wire, nothing)).toEqual({
    itemId: 'wire 0.8',
    entries: [
      { kind: 'stock-described', payload: { itemId: 'wire 0.8', thing, lowAt: null } },
      { kind: 'stock-received', payload: { itemId: 'wire 0.8', batch: 'W-1', amount: 6, expires: '2027-03-31' } },
    ],
  });
});

test('more of the same goes to what is there and leaves its low mark', () => {
  expect(putInEntries(wire, held)).toMatchObject({
    itemId: 'my 0.8',
    entries: [{ kind: 'stock-received', payload: { itemId: 'my 0.8', amount: 6 } }],
  });
});

test('the same size in another metal is another thing', () => {
  const named = { ...held, items: held.items.map((item) => ({ ...item, id: 'wire 0.8' })) };
  expect(putInEntries({ ...wire, material: 'titanium' }, named)).toMatchObject({ itemId: 'wire 0.8 (2)' });
});

test.each([
  [{ use: '' }, 'say what'],
  [{ diameter: 'thin' }, 'diameter'],
  [{ amount: '2.5' }, 'whole number'],
  [{ use: 'threaded-end', core: '1' }, 'core'],
  [{ use: 'needle', gauge: '99' }, 'gauge'],
  [{ lowAt: '-1' }, 'low mark'],
] as const)('%o is refused in words', (part, words) => {
  expect(putInEntries({ ...wire, ...part }, nothing)).toMatchObject({ refused: expect.stringContaining(words) });
});

test('a draft that cannot be read is an empty one', () => {
  expect(readPutIn({ use: 'spoon', amount: 3 })).toEqual(readPutIn(null));
});

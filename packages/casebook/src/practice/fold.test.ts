import { InputError } from '@bonewright/fault';
import { describe, expect, test } from 'vitest';
import { checkPracticeEvent, type PracticeEvent, readPracticeEvent } from './events.ts';
import { applyPractice, emptyPractice, foldPractice } from './fold.ts';
import { practiceSentenceOf } from './story.ts';
import { record, WIRE } from './test/record.ts';

const onlyItem = (events: readonly PracticeEvent[]) => foldPractice(events).stock.items[0];
const described = ['stock-described', { itemId: 'wire 1.0', thing: WIRE, lowAt: 3 }] as const;
const received = (batch: string, amount: number, expires: string | null = null) =>
  ['stock-received', { itemId: 'wire 1.0', batch, amount, expires }] as const;
const used = (as: string, amount: number, batch = 'A1') =>
  ['stock-used', { itemId: 'wire 1.0', batch, amount, forCase: 'case-0001', as }] as const;

describe('the practice keeps its stock', () => {
  test('what came in, was used and was counted is what is left', () => {
    const events = record(described, received('A1', 6), received('A1', 4), used('P1', 1), used('P2', 1));
    expect(onlyItem(events)?.lots).toMatchObject([{ batch: 'A1', left: 8 }]);
    const counted = record(described, received('A1', 6), used('P1', 1), [
      'stock-counted',
      { itemId: 'wire 1.0', batch: 'A1', left: 2 },
    ]);
    expect(onlyItem(counted)?.lots).toMatchObject([{ left: 2, counted: { value: 2, by: 'T. Okafor' } }]);
  });

  test('the same use again takes the place of the first, also from another batch; 0 gives it back', () => {
    const start = [described, received('A1', 6), received('B2', 6), used('P1', 1)] as const;
    const left = (events: readonly PracticeEvent[]) => onlyItem(events)?.lots.map((lot) => [lot.batch, lot.left]);
    expect(left(record(...start))).toEqual([
      ['A1', 5],
      ['B2', 6],
    ]);
    expect(left(record(...start, used('P1', 1)))).toEqual([
      ['A1', 5],
      ['B2', 6],
    ]);
    expect(left(record(...start, used('P1', 1, 'B2')))).toEqual([
      ['A1', 6],
      ['B2', 5],
    ]);
    expect(left(record(...start, used('P1', 0)))).toEqual([
      ['A1', 6],
      ['B2', 6],
    ]);
  });

  test('a batch keeps its bench test and its last day when more of it comes', () => {
    const putty = [
      'stock-described',
      { itemId: 'putty', thing: { use: 'putty', material: 'epoxy-putty' }, lowAt: null },
    ] as const;
    const tub = (amount: number, expires: string | null) =>
      ['stock-received', { itemId: 'putty', batch: 'C3', amount, expires }] as const;
    const tested = [
      'putty-tested',
      {
        itemId: 'putty',
        batch: 'C3',
        youngMPa: { value: 3200, sd: 150 },
        yieldMPa: null,
        testedAt: '2026-11-20T10:00:00Z',
      },
    ] as const;
    const [lot] = onlyItem(record(putty, tub(100, '2027-05-31'), tested, tub(50, null)))?.lots ?? [];
    expect(lot).toMatchObject({ left: 150, expires: '2027-05-31', test: { value: { youngMPa: { value: 3200 } } } });
  });

  test('the demonstration goes, what the practice put in stays', () => {
    const own = ['stock-described', { itemId: 'own 1.2', thing: { ...WIRE, diameterMm: 1.2 }, lowAt: null }] as const;
    const invented = ['stock-described', { ...described[1], demonstration: true }] as const;
    const { stock } = foldPractice(
      record(invented, received('A1', 6), used('P1', 1), own, ['demonstration-removed', {}]),
    );
    expect([stock.items.map(({ id }) => id), stock.uses]).toEqual([['own 1.2'], []]);
  });
});

describe('what cannot be applied is set aside with the reason', () => {
  test.each([
    ['a thing that is not there', [received('A1', 6)], 'there is no wire 1.0'],
    [
      'a name that is something else',
      [
        described,
        ['stock-described', { itemId: 'wire 1.0', thing: { use: 'putty', material: 'acrylic' }, lowAt: null }],
      ],
      'the name of something else',
    ],
    [
      'a bench test of steel',
      [
        described,
        [
          'putty-tested',
          {
            itemId: 'wire 1.0',
            batch: '',
            youngMPa: { value: 1, sd: 0 },
            yieldMPa: null,
            testedAt: '2026-11-20T10:00:00Z',
          },
        ],
      ],
      'not a putty',
    ],
  ] as const)('%s', (_, entries, because) => {
    expect(foldPractice(record(...entries)).setAside.at(-1)?.because).toContain(because);
  });

  test('an event of a newer version is kept and not understood', () => {
    const newer = readPracticeEvent({ ...record(described)[0], kind: 'people-named' });
    const state = foldPractice([newer]);
    expect([state.seq, state.setAside]).toHaveLength(2);
    expect(state.setAside[0]?.because).toContain('newer version');
    expect(practiceSentenceOf(newer)).toContain('newer version');
  });

  test('an event out of order is a fault of the reader', () => {
    const [, second] = record(described, received('A1', 6));
    expect(() => applyPractice(emptyPractice, second!)).toThrow(InputError);
  });
});

test.each([
  ['an event of a case', { caseId: 'case-0001' }, 'caseId'],
  [
    'less than nothing',
    { kind: 'stock-received', payload: { itemId: 'a', batch: '', amount: -1, expires: null } },
    'payload.amount',
  ],
  [
    'a day that is none',
    { kind: 'stock-received', payload: { itemId: 'a', batch: '', amount: 1, expires: '2026-02-30' } },
    'payload.expires',
  ],
  ['a key nobody knows', { payload: { ...described[1], colour: 'red' } }, 'payload'],
])('refused at the door: %s', (_, change, path) => {
  const draft = { ...record(described)[0], ...change };
  try {
    checkPracticeEvent(draft);
    expect.unreachable();
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    expect(error).toMatchObject({ path });
  }
});

test('each entry is a sentence, with the reason where one was given', () => {
  const [first, second] = record(described, received('A1', 6));
  expect(practiceSentenceOf(first!)).toBe('wire 1.0 in the drawer: 1 mm pin, smooth.');
  expect(practiceSentenceOf({ ...second!, why: 'a new box' })).toBe('wire 1.0, batch A1: 6 came in. Why: a new box');
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { REGISTER_KINDS, type RegisterEntry, registerEntrySchema, type SignedEntry } from './register-entry.ts';
import { registerRows } from './register-rows.ts';

const entry = (change: Partial<RegisterEntry> = {}): RegisterEntry => ({
  entryId: 'entry-0001',
  kind: 'received',
  drug: 'ketamine',
  perMl: 100,
  unit: 'mg',
  form: 'injection, 10 ml vial',
  at: '2026-11-25T10:00:00Z',
  ml: 10,
  corrects: null,
  party: 'wholesaler',
  caseId: null,
  witness: 'Ben Hay',
  note: '',
  ...change,
});
const signed = (change: Partial<RegisterEntry> = {}, at = '2026-11-25T10:05:00Z'): SignedEntry => ({
  entry: entry(change),
  by: 'Ada Marl',
  at,
});

describe('an entry is refused', () => {
  test.each<[string, Partial<RegisterEntry>]>([
    ['a correction that says of nothing', { kind: 'corrected', note: 'misread' }],
    ['a correction without words', { kind: 'corrected', corrects: 'entry-0001' }],
    ['an amount below nought', { ml: -1 }],
    ['given without witness and without saying why', { kind: 'given', witness: null }],
  ])('%s', (_, change) => {
    expect(registerEntrySchema.safeParse(entry(change)).success).toBe(false);
  });
  test('a sound one is taken', () => {
    expect(registerEntrySchema.parse(entry())).toEqual(entry());
  });
});

test('the balance runs through receipt, use, waste and correction', () => {
  const [page] = registerRows(
    [
      signed(),
      signed({ kind: 'given', ml: 0.04, entryId: 'entry-0002' }),
      signed({ kind: 'wasted', ml: 0.06, entryId: 'entry-0003' }),
      signed({ kind: 'corrected', ml: 0.01, corrects: 'entry-0002', note: '0.03 was given', entryId: 'entry-0004' }),
    ],
    0,
  );
  expect(page?.rows.map(({ balanceMl }) => balanceMl)).toEqual([10, 9.96, 9.9, 9.91]);
  expect(page?.rows.flatMap(({ remarks }) => remarks)).toEqual([]);
});

test('each drug, strength and form has its page', () => {
  expect(
    registerRows([signed(), signed({ perMl: 50 }), signed({ drug: 'methadone' }), signed({ form: 'ampoule' })], 0),
  ).toHaveLength(4);
});

test('what an inspector would ask about is said', () => {
  const [page] = registerRows(
    [
      signed({ kind: 'given', ml: 1, witness: 'ada marl' }),
      signed({ kind: 'counted', ml: 3 }),
      signed({ kind: 'given', ml: 0.1, witness: null, note: 'alone at night' }, '2026-11-28T10:00:00Z'),
      signed({ kind: 'corrected', ml: 5, corrects: 'entry-9999', note: 'found' }),
    ],
    0,
  );
  expect(page?.rows.map(({ remarks }) => remarks.join('; '))).toEqual([
    expect.stringMatching(/below nought by 1 ml.*witness is the signer/),
    expect.stringMatching(/4 ml more than the balance/),
    expect.stringMatching(/written 3 days later.*no witness/),
    expect.stringMatching(/not on this page/),
  ]);
});

test('a longer register never changes an earlier balance, and the last is the sum of all', () => {
  const kinds = fc.constantFrom(...REGISTER_KINDS.filter((kind) => kind !== 'corrected'));
  const entries = fc.array(fc.record({ kind: kinds, hundredths: fc.integer({ min: 0, max: 5000 }) }), { minLength: 1 });
  fc.assert(
    fc.property(entries, (list) => {
      const all = list.map(({ kind, hundredths }) => signed({ kind, ml: hundredths / 100 }));
      const [page] = registerRows(all, 0);
      const [before] = registerRows(all.slice(0, -1), 0);
      expect(page?.rows.slice(0, -1)).toEqual(before?.rows ?? []);
      const sign = { received: 1, given: -1, wasted: -1, destroyed: -1, counted: 0, corrected: 1 };
      const sum = list.reduce((total, { kind, hundredths }) => total + sign[kind] * hundredths, 0);
      expect(page?.balanceMl).toBeCloseTo(sum / 100, 6);
    }),
  );
});

/** No way from what was typed to a printed dose but through a vet's signature. */
import { type CaseEvent, checkEvent, foldCase } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { type DoseLine, judgeDose, signDose } from '@bonewright/ward';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DOSE_PAPERS } from './dose-papers.ts';
import { borrowedWords } from './dose-words.ts';

const made = new Date('2026-11-25T21:30:00Z');
const context = { now: '2026-11-25T21:00:00Z', minutesEastOfUtc: 0, earlier: [] };
const line = (change: Partial<DoseLine> = {}): DoseLine => ({
  drug: 'medetomidine',
  use: 'anaesthesia',
  route: 'IM',
  site: '',
  species: 'hedgehog',
  massG: 750,
  weighedAt: '2026-11-25T08:00:00Z',
  dose: { value: 0.1, unit: 'mg/kg' },
  figureId: null,
  strength: { value: 1, unit: 'mg/ml' },
  dilution: null,
  syringe: { capacityMl: 1, markMl: 0.01 },
  ...change,
});
const adrenaline = line({
  drug: 'adrenaline',
  use: 'emergency',
  route: 'IV',
  dose: { value: 0.01, unit: 'mg/kg' },
  dilution: { parts: 10, diluent: 'saline' },
});
const signatureOf = (dose: DoseLine) => {
  const reasons = Object.fromEntries(judgeDose(dose, context).remarks.map(({ code }) => [code, 'because']));
  return signDose(dose, context, { by: 'Ada Marl', reasons, secondPerson: 'Ben Hay' });
};

type Said = readonly [kind: string, payload: object];
const opened: Said = [
  'case-opened',
  {
    number: '26-043',
    species: 'hedgehog',
    name: '',
    massG: 750,
    weighedAt: '2026-11-25T08:00:00Z',
    ageClass: 'adult',
    sex: 'female',
    bone: 'femur',
    side: 'left',
  },
];
const proposed = (doseId: string, of: DoseLine): Said => ['dose-proposed', { doseId, line: of }];
const signed = (doseId: string, of: DoseLine): Said => ['dose-signed', { doseId, signature: signatureOf(of) }];
const stateOf = (...said: readonly Said[]) =>
  foldCase(
    [opened, ...said].map(
      ([kind, payload], i): CaseEvent =>
        checkEvent({
          schema: 1,
          id: `event-${i}-of-case`,
          caseId: 'case-0001',
          seq: i + 1,
          at: context.now,
          by: 'Ada Marl',
          kind,
          payload,
        }),
    ),
  );
const print = (name: keyof typeof DOSE_PAPERS, said: readonly Said[], at = made) =>
  DOSE_PAPERS[name]({ state: stateOf(...said), made: at, minutesEastOfUtc: 0, version: 'test' });

test.each(['doses', 'emergency'] as const)('a signed dose comes out as a PDF: %s', async (name) => {
  const pdf = await print(name, [signed('dose-0001', name === 'doses' ? line() : adrenaline)]);
  expect(new TextDecoder().decode(pdf.subarray(0, 5))).toBe('%PDF-');
});

test('a crash drug from another animal’s table says so on the paper', () => {
  expect(borrowedWords(signatureOf(adrenaline))).toMatch(/No dose for a hedgehog.*dogs and cats/);
  expect(borrowedWords(signatureOf(line()))).toBe('');
});

describe('refused', () => {
  const amended: Said = ['patient-amended', { massG: 700 }];
  const voided: Said = ['dose-voided', { doseId: 'dose-0001', because: 'wrong vial' }];
  test.each<[string, keyof typeof DOSE_PAPERS, readonly Said[], RegExp]>([
    ['nothing signed', 'doses', [], /no dose is signed/],
    ['one of two unsigned', 'doses', [signed('dose-0001', line()), proposed('dose-0002', line())], /is not signed/],
    [
      'signed, then written anew',
      'doses',
      [signed('dose-0001', line()), proposed('dose-0001', line())],
      /is not signed/,
    ],
    ['an unsigned crash drug', 'emergency', [proposed('dose-0001', adrenaline)], /is not signed/],
    ['all voided', 'doses', [signed('dose-0001', line()), voided], /no dose is signed/],
    [
      'another mass since',
      'doses',
      [signed('dose-0001', line()), amended],
      /signed for 750 g, the patient now weighs 700 g/,
    ],
    [
      'too many for one page',
      'emergency',
      Array.from({ length: 8 }, (_, i) => signed(`dose-000${i}`, adrenaline)),
      /do not fit/,
    ],
  ])('%s', async (_, name, said, why) => {
    await expect(print(name, said)).rejects.toThrow(why);
    await expect(print(name, said)).rejects.toBeInstanceOf(InputError);
  });
  test('signed yesterday and not given', async () => {
    await expect(print('doses', [signed('dose-0001', line())], new Date('2026-11-26T21:30:00Z'))).rejects.toThrow(
      /signed on another day/,
    );
  });
});

test('whatever happens to two doses, a paper comes out only while every one that stands is signed', async () => {
  const step = fc.record({
    doseId: fc.constantFrom('dose-0001', 'dose-0002'),
    what: fc.constantFrom('proposed', 'signed', 'given', 'voided'),
    isCrash: fc.boolean(),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 6 }), async (steps) => {
      const said = steps.map(({ doseId, what, isCrash }): Said => {
        const of = isCrash ? adrenaline : line();
        if (what === 'proposed') return proposed(doseId, of);
        if (what === 'signed') return signed(doseId, of);
        return what === 'given'
          ? ['dose-given', { doseId, at: '2026-11-25T21:10:00Z', note: '' }]
          : ['dose-voided', { doseId, because: 'because' }];
      });
      const { doses } = stateOf(...said);
      const isCrash = ({ line: { use } }: (typeof doses)[number]) => use === 'emergency';
      const onDoses = doses.filter((dose) => !dose.voided && !isCrash(dose));
      const onEmergency = doses.filter((dose) => !dose.voided && isCrash(dose) && !dose.given);
      for (const [name, standing] of [
        ['doses', onDoses],
        ['emergency', onEmergency],
      ] as const) {
        const mayPrint = standing.length > 0 && standing.every(({ signed: signature }) => signature !== null);
        if (mayPrint) expect((await print(name, said)).byteLength).toBeGreaterThan(0);
        else await expect(print(name, said)).rejects.toBeInstanceOf(InputError);
      }
    }),
    { numRuns: 25 },
  );
});

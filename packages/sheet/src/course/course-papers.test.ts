/** Papers of a patient's course: what they refuse, and that a PDF comes of the rest. What they say is read in the browser test. */
import { checkEvent, foldCase } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { expect, test } from 'vitest';
import { CASE_PAPERS } from '../case-papers.ts';

const AT = '2026-11-25T21:00:00Z';
type Said = readonly [kind: string, payload: object];
const opened: Said = [
  'case-opened',
  {
    number: '26-050',
    species: 'hedgehog',
    name: '',
    massG: 620,
    weighedAt: AT,
    ageClass: 'adult',
    sex: 'female',
    bone: 'femur',
    side: 'left',
  },
];
const plan = (doseId: string | null): Said => [
  'aftercare-planned',
  {
    tasks: [{ what: 'Medicine', when: 'every morning', doseId }],
    lookFor: ['dry'],
    ringWhen: ['a pin moves'],
    phone: '01632 960 141',
    housing: '',
    recheckOn: null,
  },
];
const factsOf = (...said: readonly Said[]) => ({
  state: foldCase(
    [opened, ...said].map(([kind, payload], i) =>
      checkEvent({
        schema: 1,
        id: `event-${i}-sheet`,
        caseId: 'case-0001',
        seq: i + 1,
        at: AT,
        by: 'A',
        kind,
        payload,
      }),
    ),
  ),
  made: new Date(AT),
  minutesEastOfUtc: 0,
  version: '0',
});
const head = (pdf: Uint8Array) => Buffer.from(pdf.subarray(0, 5)).toString();

test('no discharge sheet without aftercare, and none that names a dose nobody signed', async () => {
  await expect(CASE_PAPERS.discharge(factsOf())).rejects.toThrow(InputError);
  await expect(CASE_PAPERS.discharge(factsOf(plan('dose-0001')))).rejects.toThrow(/not signed/);
  expect(head(await CASE_PAPERS.discharge(factsOf(plan(null))))).toBe('%PDF-');
});

test('release sheet and letters come of the barest record', async () => {
  for (const paper of ['release', 'referral-back', 'rescue-report', 'finder-thanks'] as const)
    expect(head(await CASE_PAPERS[paper](factsOf()))).toBe('%PDF-');
});

import { expect, test } from 'vitest';
import { dueOf } from './due.ts';
import { checkEvent } from './events.ts';
import { foldCase } from './fold.ts';

type Said = readonly [kind: string, payload: object, at?: string];
const day = (n: number): string => `2026-11-${String(n).padStart(2, '0')}T12:00:00Z`;
const opened: Said = [
  'case-opened',
  {
    number: '1',
    species: 'hedgehog',
    name: '',
    massG: 800,
    weighedAt: null,
    ageClass: '',
    sex: 'female',
    bone: 'femur',
    side: 'left',
  },
];
const due = (...said: readonly Said[]) =>
  dueOf(
    foldCase(
      [opened, ...said].map(([kind, payload, at = day(1)], i) =>
        checkEvent({ schema: 1, id: `event-${i}-due`, caseId: 'case-0001', seq: i + 1, at, by: 'A', kind, payload }),
      ),
    ),
  );
const recheck = (on: string, who = 'R. Fenn'): Said => ['recheck-set', { on, what: 'film', who }];
const site = (n: number, grade: string, isSeenInPerson = true): Said => [
  'pin-site-seen',
  { at: day(n), pin: 2, scale: 'plain-words', grade, words: '', photo: null, isSeenInPerson },
];
const asked: Said = ['question-asked', { questionId: 'question-1', at: day(3), words: 'It scratches?' }];
const taken: Said = ['frame-taken-off', { at: day(9), isAllOut: true, words: '' }];
const filmed = (isMet: string): Said => ['readiness-noted', { item: 'film-after-removal', isMet, words: 'said' }];

test('a question stays due until it is answered', () => {
  expect(due(asked)).toEqual([{ what: 'Answer: It scratches?', on: '2026-11-03', who: 'surgeon or nurse' }]);
  expect(due(asked, ['question-answered', { questionId: 'question-1', words: 'No.' }])).toEqual([]);
});

test('a look that was set is done by a look on its day or later, not by an earlier one or a photograph', () => {
  expect(due(recheck('2026-11-10'), site(9, 'dry'), site(11, 'dry', false))).toEqual([
    { what: 'film', on: '2026-11-10', who: 'R. Fenn' },
  ]);
  expect(due(recheck('2026-11-10'), site(10, 'dry'))).toEqual([]);
});

test('the day in the aftercare counts once, also where it was set as a look', () => {
  const plan = { tasks: [], lookFor: [], ringWhen: [], phone: '', housing: '', recheckOn: '2026-11-10' };
  expect(due(['aftercare-planned', plan])).toMatchObject([{ what: 'Recheck', who: 'nobody named' }]);
  expect(due(['aftercare-planned', plan], recheck('2026-11-10', ''))).toHaveLength(1);
});

test('a swollen pin site is a surgeon’s until it is seen dry; the earliest due stands first', () => {
  expect(due(site(5, 'swollen'))).toEqual([{ what: 'Look at P2: swollen', on: '2026-11-05', who: 'surgeon' }]);
  expect(due(site(5, 'swollen'), site(6, 'dry'))).toEqual([]);
  expect(due(site(5, 'swollen'), asked).map(({ on }) => on)).toEqual(['2026-11-03', '2026-11-05']);
});

test('frame: to be taken off, then filmed, then nothing', () => {
  expect(due(['frame-off-decided', { isToComeOff: true, words: '' }, day(8)])).toMatchObject([
    { what: 'Take the frame off' },
  ]);
  expect(due(taken)).toMatchObject([{ what: 'Film after the frame came off', on: '2026-11-09' }]);
  expect(due(taken, filmed('no'))).toHaveLength(1);
  expect(due(taken, filmed('yes'))).toEqual([]);
});

test('a patient that went owes only its two outcomes', () => {
  const went: Said = ['released', { at: day(20), place: 'lane', isWhereFound: true, with: '', words: '' }];
  expect(due(asked, went)).toEqual([
    { what: 'Write the outcome of the bone and of the patient', on: '2026-11-20', who: 'surgeon' },
  ]);
  const both: Said[] = [
    ['bone-outcome', { bone: 'healed', words: '' }],
    ['patient-outcome', { patient: 'released', words: '' }],
  ];
  expect(due(asked, went, ...both)).toEqual([]);
});

import { expect, test } from 'vitest';
import { checkEvent } from './events.ts';
import { foldCase } from './fold.ts';
import { isFrameOn } from './frame-on.ts';
import { releaseGaps } from './release-gaps.ts';
import { stageOf } from './stage.ts';

const AT = '2026-11-25T21:00:00Z';
type Said = readonly [kind: string, payload: object];
const opened = (species: string): Said => [
  'case-opened',
  {
    number: '26-050',
    species,
    name: '',
    massG: 620,
    weighedAt: AT,
    ageClass: 'adult',
    sex: 'female',
    bone: 'femur',
    side: 'left',
  },
];
const stateOf = (species: string, ...said: readonly Said[]) =>
  foldCase(
    [opened(species), ...said].map(([kind, payload], i) =>
      checkEvent({
        schema: 1,
        id: `event-${i}-gaps`,
        caseId: 'case-0001',
        seq: i + 1,
        at: AT,
        by: 'Ida Fenn',
        kind,
        payload,
      }),
    ),
  );
const ready = (item: string): Said => ['readiness-noted', { item, isMet: 'yes', words: '' }];
const ALL = [
  'weight-and-condition',
  'curls-fully',
  'bears-weight-both-sides',
  'grooms-both-sides',
  'filmed',
  'natural-food',
  'drugs-out',
  'implants-out',
  'parasites',
  'site-safe',
  'forecast-seen',
  'young-asked',
].map(ready);
const forecast = (lowestC: number, night = '2026-11-25'): Said => [
  'forecast-noted',
  { night, lowestC, words: '', source: 'national weather service' },
];
const limits = (mass: string, night: string): Said[] => [
  ['limit-chosen', { subject: 'mass', evidenceId: mass }],
  ['limit-chosen', { subject: 'night', evidenceId: night }],
];
const study = limits('release.hedgehog.mass.winter', 'release.night.winter-study');
const pinIn: Said = ['pin-placed', { pin: 1, sMm: 8, aboutDeg: 0, tiltDeg: 0, cortices: 2 }];
const offAt = { at: AT, isAllOut: true, words: '' };
const united = (by: string): Said => ['union-judged', { by, isUnited: true, words: '', filmIds: [] }];

test('nothing said: every line of the list is open, and both limits wait for a choice', () => {
  const gaps = releaseGaps(stateOf('hedgehog'), '2026-11-25');
  expect(gaps.filter((gap) => gap.endsWith('not looked.'))).toHaveLength(ALL.length);
  expect(gaps.filter((gap) => gap.startsWith('Sources disagree'))).toHaveLength(2);
  expect(gaps).toContain('No forecast was written down.');
});

test('620 g and 4 degrees: ready by the winter study, not by the station', () => {
  const said = [...ALL, forecast(4)];
  expect(releaseGaps(stateOf('hedgehog', ...said, ...study), '2026-11-25')).toEqual([]);
  const station = limits('release.hedgehog.mass.winter', 'release.night.station');
  expect(releaseGaps(stateOf('hedgehog', ...said, ...station), '2026-11-25')).toEqual([
    'The forecast is 4 °C, not above the 8 °C that were chosen.',
  ]);
});

test('a forecast for another night is said', () => {
  const state = stateOf('hedgehog', ...ALL, forecast(4, '2026-11-24'), ...study);
  expect(releaseGaps(state, '2026-11-25')).toEqual(['The forecast is for 2026-11-24, not for 2026-11-25.']);
});

test('with pins in: frame, and union by hand and by film; taken off and signed, nothing is left', () => {
  const framed = stateOf('hedgehog', pinIn, ...ALL, forecast(4), ...study);
  expect(isFrameOn(framed)).toBe(true);
  expect(releaseGaps(framed, '2026-11-25')).toHaveLength(3);
  const off = [united('hand'), united('film'), ['frame-taken-off', offAt]] as const;
  expect(releaseGaps(stateOf('hedgehog', pinIn, ...ALL, forecast(4), ...study, ...off), '2026-11-25')).toEqual([]);
  const left = ['frame-taken-off', { ...offAt, isAllOut: false }] as const;
  expect(releaseGaps(stateOf('hedgehog', pinIn, ...ALL, forecast(4), ...study, ...off, left), '2026-11-25')).toEqual([
    'Not all that went in came out.',
  ]);
});

test('a species without a published limit is not held to one', () => {
  const said = [...ALL, ready('moves-as-its-kind'), forecast(-3)];
  expect(releaseGaps(stateOf('rabbit', ...said), '2026-11-25')).toEqual([]);
});

test('a frame that came off is at rechecks, a patient that went is at release', () => {
  expect(stageOf(stateOf('hedgehog', pinIn, ['frame-taken-off', offAt]))).toBe('rechecks');
  const went = { at: AT, place: 'Mill Lane', isWhereFound: true, with: '', words: '' };
  expect(stageOf(stateOf('hedgehog', ['released', went]))).toBe('release');
});

test('a weight from before the frame came off is not the weight it leaves with', () => {
  const later = { ...offAt, at: '2026-11-26T21:00:00Z' };
  const said = [
    pinIn,
    ...ALL,
    forecast(4),
    ...study,
    united('hand'),
    united('film'),
    ['frame-taken-off', later],
  ] as const;
  expect(releaseGaps(stateOf('hedgehog', ...said), '2026-11-25')).toEqual([
    'It was not weighed since the frame came off.',
  ]);
  const weighed: Said = ['weighed', { at: '2026-11-27T08:00:00Z', massG: 640, withFrame: false, scale: '' }];
  expect(releaseGaps(stateOf('hedgehog', ...said, weighed), '2026-11-25')).toEqual([]);
});

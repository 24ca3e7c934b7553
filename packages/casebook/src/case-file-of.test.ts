import { describe, expect, test } from 'vitest';
import schema1 from '../fixtures/schema-1.json' with { type: 'json' };
import { boardRow, nextCaseNumber } from './board-row.ts';
import { caseFileOf } from './case-file-of.ts';
import { type RecordedEvent, readEvent } from './events.ts';
import { foldCase } from './fold.ts';
import { outOfDate } from './out-of-date.ts';
import { stageOf } from './stage.ts';
import { sentenceOf } from './story.ts';

const events: RecordedEvent[] = schema1.map(readEvent);
const until = (kind: string) =>
  events.slice(
    0,
    events.findIndex((event) => event.kind === kind),
  );

function then(kind: string, payload: unknown): RecordedEvent[] {
  const seq = events.length + 1;
  const head = { schema: 1, id: `later-event-${seq}`, caseId: events[0]?.caseId, seq, by: 'R. Fenn' };
  return [...events, readEvent({ ...head, at: '2026-11-26T08:00:00Z', kind, payload })];
}

describe('the case file for mechanics', () => {
  test('holds what was recorded, under the names of the command line', () => {
    const { caseFile, missing } = caseFileOf(foldCase(events));
    expect(missing).toEqual([]);
    expect(caseFile).toMatchObject({
      patient: { species: 'red squirrel', massG: 310, ageClass: 'adult' },
      bone: { name: 'tibia', side: 'left', lengthMm: 52 },
      fracture: { fromMm: 24, toMm: 26.5, gapMm: 0.8, obliquityDeg: 20, comminuted: false, fissuresMm: [[21, 24]] },
      keepOut: { proximalMm: 5, distalMm: 6 },
      corridors: [{ fromMm: 5, toMm: 46, aboutDeg: [-35, 40] }],
      softTissueMm: [
        { sMm: 0, depthMm: 5 },
        { sMm: 52, depthMm: 2 },
      ],
      construct: { im: { drawerId: 'k', tiedIn: true }, column: { drawerId: 'p', clearanceMm: 4 } },
      seed: 1,
    });
    expect(caseFile?.bone.stations[0]).toMatchObject({ sMm: 0, outerMm: [6.8, 5.9], canalMm: null });
  });

  test('a case just opened says everything that is missing, a sentence each', () => {
    expect(caseFileOf(foldCase(events.slice(0, 1))).missing).toEqual([
      'The patient has not been weighed.',
      'The bone has not been measured: trace two films and join them.',
      'The fracture has not been described: say how wide its gap will be.',
      'The drawer is empty: say which pins and which putty there are.',
    ]);
  });

  test('a construct that no longer fits the bone is left out, so that plans can be ranked again', () => {
    const long = { drawerId: 'a', sMm: 60, tiltDeg: 0, aboutDeg: 0 };
    const construct = { im: null, pins: [long], column: { drawerId: 'p', clearanceMm: 4 }, grip: 'usual' };
    const { caseFile } = caseFileOf(foldCase(then('construct-chosen', { construct, summary: null })));
    expect(caseFile?.construct).toBeUndefined();
    expect(caseFile?.bone.lengthMm).toBe(52);
  });

  test('what cannot be is said in words with its place: a gap longer than the broken stretch', () => {
    const fracture = { fromMm: 24, toMm: 26.5, gapMm: 9 };
    const { caseFile, missing } = caseFileOf(foldCase(then('fracture-described', fracture)));
    expect(caseFile).toBeNull();
    expect(missing).toEqual([expect.stringMatching(/gap 9 mm .*fracture\.gapMm/)]);
  });

  test('without a construct the file is whole, for plan to search', () => {
    const { caseFile } = caseFileOf(foldCase(until('construct-chosen')));
    expect(caseFile?.construct).toBeUndefined();
    expect(caseFile?.drawer.imPins).toHaveLength(1);
  });
});

describe('out of date', () => {
  test('nothing, as the case was recorded', () => {
    expect(outOfDate(foldCase(events))).toEqual([]);
  });

  test('a new mass makes ranking and construct out of date, and says so', () => {
    expect(outOfDate(foldCase(then('patient-amended', { massG: 372 })))).toEqual([
      { part: 'ranking', because: 'the patient changed since' },
      { part: 'construct', because: 'the patient changed since' },
    ]);
  });

  test('a film clicked again makes the bone out of date', () => {
    const clicks = events.find(({ kind }) => kind === 'film-clicked')?.payload;
    expect(outOfDate(foldCase(then('film-clicked', clicks))).map(({ part }) => part)).toEqual(['bone']);
  });

  test('another construct makes the printed sheet out of date', () => {
    const chosen = events.find(({ kind }) => kind === 'construct-chosen')?.payload;
    expect(outOfDate(foldCase(then('construct-chosen', chosen))).map(({ part }) => part)).toEqual(['sheet']);
  });
});

describe('the board', () => {
  test.each([
    ['patient-amended', 'admission', ['Add two views of the bone.']],
    ['film-view-set', 'films', ['The bone has not been measured: trace two films and join them.']],
    ['fracture-described', 'plan', ['The fracture has not been described: say how wide its gap will be.']],
    ['construct-chosen', 'plan', ['Choose a plan.']],
    ['stage-entered', 'theatre', []],
  ])('before %s the stage is %s, and it says what comes next', (kind, stage, next) => {
    const row = boardRow(foldCase(until(kind)));
    expect(row?.stage).toBe(stage);
    expect(row?.next).toEqual(expect.arrayContaining(next));
    if (next.length === 0) expect(row?.next).toEqual([]);
  });

  test('carries the worst margin of the construct that was chosen', () => {
    expect(boardRow(foldCase(events))).toMatchObject({
      number: '26-041',
      massG: 310,
      films: 2,
      plan: { verdict: 'watch', worst: { p05: 1.28, weakest: 'P3 where it enters the column' } },
    });
  });

  test('a stage entered earlier than the work done does not hold the case back', () => {
    expect(stageOf(foldCase(then('stage-entered', { stage: 'films' })))).toBe('theatre');
    expect(stageOf(foldCase(then('stage-entered', { stage: 'recovery' })))).toBe('recovery');
  });

  test('the next number of the year: after the highest, whatever else was written on cards', () => {
    expect(nextCaseNumber([], 2026)).toBe('26-001');
    expect(nextCaseNumber(['26-041', '26-009', '25-390', 'fox', '26-old'], 2026)).toBe('26-042');
    expect(nextCaseNumber(['26-999'], 2026)).toBe('26-1000');
    expect(nextCaseNumber(['26-041'], 2027)).toBe('27-001');
  });
});

describe('the history', () => {
  test('reads like a story: the mass, the correction and its reason', () => {
    const story = events.map(sentenceOf);
    expect(story[0]).toBe('Case 26-041 opened: red squirrel, not weighed, left tibia.');
    expect(story[1]).toBe(
      'Patient amended: mass in g 310, weighed at 2026-11-25T23:07:00Z. Why: weighed under anaesthesia',
    );
    expect(story).toContain('Film taken out of the case; its file is kept. Why: the film of another patient');
    expect(story).toContain('Construct chosen: 4 pins and an IM pin.');
  });

  test('every event has a sentence of its own that ends', () => {
    for (const event of events) expect(sentenceOf(event)).toMatch(/^[A-Z0-9].*\S$/);
  });
});

import { type CaseEvent, checkEvent, SCHEMA_VERSION } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import { HARE_OPENED } from './hare-opened.ts';
import { caseKind, type OfCase, type Waiting } from './record-kind.ts';
import { emptyLog, queued, type RecordLog, received, stateOf, toSend, withWaiting } from './record-log.ts';

const CASE = 'case-0001';
const head = (id: string) => ({ id, caseId: CASE, at: '2026-11-24T22:41:00Z', by: 'test' });
const note = (id: string, text: string): Waiting => ({
  kind: 'note-added',
  payload: { text, stage: null },
  ...head(id),
  refused: null,
});
const opening: Waiting = { ...HARE_OPENED, ...head('opening-1'), refused: null };

const asRecorded = ({ refused: _, ...entry }: Waiting, seq: number): CaseEvent =>
  checkEvent({ ...entry, schema: SCHEMA_VERSION, seq });

const recordedOne: RecordLog<OfCase> = received(emptyLog(caseKind(CASE)), [asRecorded(opening, 1)]);
const notes = (log: RecordLog<OfCase>): string[] => stateOf(log).notes.map(({ value }) => value.text);

test('what waits is seen at once and numbered on from the record', () => {
  const log = queued(recordedOne, [note('note-0001', 'one'), note('note-0002', 'two')]);
  expect(notes(log)).toEqual(['one', 'two']);
  expect(toSend(log).map(({ seq }) => seq)).toEqual([2, 3]);
});

test('somebody else was first: theirs stands before, mine follows under the next number', () => {
  const mine = queued(recordedOne, [note('note-mine', 'mine')]);
  const after = received(mine, [asRecorded(note('note-theirs', 'theirs'), 2)]);
  expect(notes(after)).toEqual(['theirs', 'mine']);
  expect(toSend(after).map(({ id, seq }) => [id, seq])).toEqual([['note-mine', 3]]);
});

test('an answer that was lost: the entry comes back from the server and waits no longer', () => {
  const mine = queued(recordedOne, [note('note-mine', 'mine')]);
  const after = received(mine, [asRecorded(note('note-mine', 'mine'), 2)]);
  expect(toSend(after)).toEqual([]);
  expect(notes(after)).toEqual(['mine']);
});

test('the same news twice, and in any order, counts once', () => {
  const events = [asRecorded(note('note-0002', 'two'), 3), asRecorded(note('note-0001', 'one'), 2)];
  const once = received(recordedOne, events);
  expect(received(once, events)).toEqual(once);
  expect(notes(once)).toEqual(['one', 'two']);
});

test('an entry kept by two pages is queued once', () => {
  const log = queued(queued(recordedOne, [note('note-0001', 'one')]), [note('note-0001', 'one')]);
  expect(log.waiting).toHaveLength(1);
});

test('a refused entry is kept, but neither sent nor counted', () => {
  const log = queued(recordedOne, [note('note-0001', 'one'), note('note-0002', 'two')]);
  const marked = withWaiting(
    log,
    log.waiting.map((w) => (w.id === 'note-0001' ? { ...w, refused: 'no' } : w)),
  );
  expect(notes(marked)).toEqual(['two']);
  expect(toSend(marked).map(({ id, seq }) => [id, seq])).toEqual([['note-0002', 2]]);
  expect(marked.waiting).toHaveLength(2);
});

test('a case that is new here opens from what waits alone', () => {
  const log = queued(emptyLog(caseKind(CASE)), [opening, note('note-0001', 'one')]);
  expect(stateOf(log).patient?.value.species).toBe('hare');
  expect(stateOf(log).seq).toBe(2);
});

import { checkEvent } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import { admissionOutcome, admissionValues } from './admission-fields.ts';

const empty = admissionValues({});
const place = { words: 'verge of Mill Lane', mapReference: '', latitudeDeg: 52.31, longitudeDeg: -1.87 };

test('only what is new goes into the record, as an event that the record takes', () => {
  const before = admissionValues({ cause: 'car', place });
  const said = admissionOutcome({ ...before, wound: 'open', finderName: 'J. Reed' }, before);
  expect(said).toEqual({
    entries: [{ kind: 'admission-noted', payload: { wound: 'open', finder: { name: 'J. Reed', contact: '' } } }],
  });
  const event = { schema: 1, id: 'event-0001', caseId: 'case-0001', seq: 1, at: '2026-11-25T20:00:00Z', by: 'A' };
  if ('entries' in said) expect(checkEvent({ ...event, ...said.entries[0] }).kind).toBe('admission-noted');
});

test('a place in degrees comes back as it was typed, comma or point', () => {
  const typed = { ...empty, placeWords: ' verge of Mill Lane', latitude: '52,31', longitude: '-1.87' };
  expect(admissionOutcome(typed, empty)).toEqual({ entries: [{ kind: 'admission-noted', payload: { place } }] });
  expect(admissionValues({ place })).toMatchObject({ latitude: '52.31', longitude: '-1.87' });
});

test.each([
  [{ latitude: '52.31', placeWords: 'lane' }, 'longitude'],
  [{ latitude: '152', longitude: '0', placeWords: 'lane' }, 'latitude'],
  [{ mapReference: 'SP 12 34' }, 'placeWords'],
])('half a place is said at its field: %o', (part, key) => {
  const said = admissionOutcome({ ...empty, ...part }, empty);
  expect('faults' in said && Object.keys(said.faults)).toEqual([key]);
});

test('nothing typed records nothing', () => {
  expect(admissionOutcome(empty, empty)).toHaveProperty('faults');
});

import { expect, test } from 'vitest';
import { checkEvent } from './events.ts';
import { filesNamed } from './files-named.ts';

const at = '2026-11-25T21:00:00Z';
const photo = { sha256: 'ab'.repeat(32), fileName: 'pin-two.jpg', byteLength: 120 };
const event = (kind: string, payload: object) =>
  checkEvent({ schema: 1, id: 'event-0001', caseId: 'case-0001', seq: 2, at, by: 'Ida Fenn', kind, payload });
const site = { at, pin: 2, scale: 'plain words', grade: 'dry', words: '', isSeenInPerson: true };

test('an event names the photograph it rests on, and none where none was taken', () => {
  expect(filesNamed(event('photo-added', { at, photo, words: '' }))).toEqual([photo]);
  expect(filesNamed(event('pin-site-seen', { ...site, photo }))).toEqual([photo]);
  expect(filesNamed(event('pin-site-seen', { ...site, photo: null }))).toEqual([]);
  expect(filesNamed(event('note-added', { text: 'eats', stage: null }))).toEqual([]);
});

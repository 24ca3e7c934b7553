import { expect, test } from 'vitest';
import { nameOfReceived, receivedWords } from './received-words.ts';

const film = {
  sha256: 'ab'.repeat(32),
  byteLength: 100,
  receivedAt: '2026-11-24T22:41:07.000Z',
  sender: 'XRAY1',
  header: { patientName: 'Hazel^Thornbeck', patientId: 'T-1', bodyPart: 'LEG', view: 'medio-lateral', laterality: 'L' },
};

test('the header says whose film it is; the name in the case says nobody', () => {
  expect(receivedWords(film)).toMatchObject({
    who: 'Hazel Thornbeck, number T-1',
    what: 'leg, side L, view medio-lateral',
    from: 'XRAY1',
  });
  expect(nameOfReceived(film)).toBe('XRAY1 2026-11-24 22:41 ababab.dcm');
});

test('what the header leaves out is said to be left out', () => {
  expect(receivedWords({ ...film, header: {} })).toMatchObject({
    who: 'no name in the file',
    what: 'part and view not said',
    when: expect.stringMatching(/^time not said, came /),
  });
});

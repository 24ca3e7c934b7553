/** Calendar and table of outcomes over HTTP, against what RFC 5545 and RFC 4180 ask of such files. */
import { type CaseEvent, checkEvent } from '@bonewright/casebook';
import { expect, test } from 'vitest';
import { CASE, opened, served } from '../test/served.ts';

const at = '2026-11-25T21:00:00Z';
const event = (seq: number, kind: string, payload: object): CaseEvent =>
  checkEvent({ schema: 1, id: `${CASE}-more-${seq}`, caseId: CASE, seq, at, by: 'R. Fenn', kind, payload });
const what = 'film, two views; then: Füße ansehen, mit einem sehr langen Satz, der über die Zeile hinausgeht';

test('a look that was set is a whole day in the calendar, folded at 75 octets and escaped; a patient that went is not in it', async () => {
  const { app, store } = await served();
  await store.append([opened(), event(2, 'recheck-set', { on: '2026-12-05', what, who: 'R. Fenn' })]);
  const answer = await app.inject('/api/calendar.ics');
  expect(answer.headers['content-type']).toContain('text/calendar');
  const lines = answer.body.split('\r\n');
  expect(lines.every((line) => Buffer.byteLength(line) <= 75)).toBe(true);
  const whole = answer.body.replaceAll('\r\n ', '');
  expect(whole).toContain('DTSTART;VALUE=DATE:20261205\r\n');
  expect(whole).toContain(what.replaceAll(/[;,]/g, (sign) => `\\${sign}`));
  expect(whole).toMatch(/^BEGIN:VCALENDAR\r\n[\s\S]*END:VCALENDAR\r\n$/);
  const went = { at, place: 'Mill Lane', isWhereFound: true, with: '', words: '' };
  await store.append([event(3, 'released', went)]);
  expect((await app.inject('/api/calendar.ics')).body).not.toContain('VEVENT');
});

test('the table keeps both outcomes apart, names nobody, and is no formula to a spreadsheet', async () => {
  const { app, store } = await served();
  await store.append([
    opened(),
    event(2, 'patient-amended', { ageClass: '=1+1, "adult"' }),
    event(3, 'admission-noted', { finder: { name: 'J. Reed', contact: '' } }),
    event(4, 'bone-outcome', { bone: 'healed', words: '' }),
    event(5, 'patient-outcome', { patient: 'died', words: '' }),
  ]);
  const { body } = await app.inject('/api/outcomes.csv');
  const [head = '', line = ''] = body.split('\r\n');
  expect(head.endsWith('outcome of the bone,outcome of the patient')).toBe(true);
  expect(line.endsWith('healed,died')).toBe(true);
  expect(line).toContain(`"'=1+1, ""adult"""`);
  expect(body).not.toMatch(/Reed|Fenn/);
});

/** Looks at patients as a calendar file (RFC 5545): one whole-day event each, lines of at most 75 octets ended by CRLF. */
import { type CaseState, hasGone, looksSet } from '@bonewright/casebook';

const LONGEST_OCTETS = 75;

/** The looks that were set for patients still in care. `made` stamps the file. */
export function calendarOf(states: readonly CaseState[], made: Date): string {
  const stamp = made.toISOString().replaceAll(/[-:]|\.\d+/g, '');
  const events = states.filter((state) => !hasGone(state)).flatMap((state) => eventsOf(state, stamp));
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Bonewright//Looks at patients//EN',
    'CALSCALE:GREGORIAN',
    ...events,
    'END:VCALENDAR',
  ];
  return `${lines.map(folded).join('\r\n')}\r\n`;
}

function eventsOf(state: CaseState, stamp: string): string[] {
  const patient = state.patient?.value;
  return looksSet(state).flatMap(({ what, on, who }, i) => [
    'BEGIN:VEVENT',
    `UID:${state.caseId}-${on}-${i}@bonewright`,
    `DTSTAMP:${stamp}`,
    `DTSTART;VALUE=DATE:${on.replaceAll('-', '')}`,
    `SUMMARY:${escaped(`${patient?.species ?? 'Patient'} ${patient?.number ?? ''}: ${what}`)}`,
    `DESCRIPTION:${escaped(who)}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ]);
}

const escaped = (text: string): string => text.replaceAll(/[\\;,]/g, (sign) => `\\${sign}`).replaceAll(/\r?\n/g, '\\n');

/** Breaks a long line between characters; what follows begins with a space. */
function folded(line: string): string {
  const parts: string[] = [];
  let part = '';
  for (const sign of line) {
    const most = parts.length === 0 ? LONGEST_OCTETS : LONGEST_OCTETS - 1;
    if (Buffer.byteLength(part + sign) > most) {
      parts.push(part);
      part = '';
    }
    part += sign;
  }
  return [...parts, part].join('\r\n ');
}

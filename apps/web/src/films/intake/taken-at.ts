/** When a film was taken, from what its header says. The header has no time zone: it is read as this place's time. */
import type { Film } from '@bonewright/film';

const PAIRS = [
  ['acquisitionDate', 'acquisitionTime'],
  ['contentDate', 'contentTime'],
  ['studyDate', 'studyTime'],
] as const;

/** ISO text; null where the header gives no whole date and time. */
export function takenAt(header: Film['header']): string | null {
  const whole = header.acquisitionDateTime ?? '';
  const candidates = [
    [whole.slice(0, 8), whole.slice(8)],
    ...PAIRS.map(([d, t]) => [header[d] ?? '', header[t] ?? '']),
  ];
  for (const [date = '', time = ''] of candidates) {
    const at = parsed(date, time);
    if (at) return at;
  }
  return null;
}

function parsed(date: string, time: string): string | null {
  const day = /^(\d{4})\.?(\d{2})\.?(\d{2})$/.exec(date.trim());
  const hour = /^(\d{2}):?(\d{2})(?::?(\d{2}))?/.exec(time.trim());
  if (!day || !hour) return null;
  const at = new Date(`${day[1]}-${day[2]}-${day[3]}T${hour[1]}:${hour[2]}:${hour[3] ?? '00'}`);
  return Number.isNaN(at.getTime()) ? null : at.toISOString();
}

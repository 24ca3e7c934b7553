/** The mass a dose is worked out from: of today, and one such an animal can have. */
import { value } from '@bonewright/evidence';
import { dayAt, hoursBetween } from '../../moments/moment.ts';
import type { DoseLine } from '../dose-line.ts';
import { plain } from '../figure-words.ts';
import type { DoseContext } from '../given.ts';
import { grownMass } from '../patient-kind.ts';
import { asks, type Remark } from '../remark.ts';

type Weighed = Pick<DoseLine, 'massG' | 'weighedAt' | 'species'>;
type Clock = Pick<DoseContext, 'now' | 'minutesEastOfUtc'>;

export function massRemarks(line: Weighed, clock: Clock): Remark[] {
  const remarks: Remark[] = [];
  if (line.weighedAt === null) remarks.push(asks('mass-undated', 'Nobody wrote down when it was weighed.'));
  else if (!isOfToday(line.weighedAt, clock))
    remarks.push(asks('mass-old', 'The mass is not of today. Weigh it again, or say why this one holds.'));
  const odd = oddMass(line);
  return odd ? [...remarks, odd] : remarks;
}

/** Weighed on this calendar day of the place, or so few hours ago that midnight makes no difference. */
export function isOfToday(weighedAt: string, { now, minutesEastOfUtc }: Clock): boolean {
  const hours = hoursBetween(weighedAt, now);
  if (hours < 0) return false;
  return hours <= value('dose.mass-hours') || dayAt(weighedAt, minutesEastOfUtc) === dayAt(now, minutesEastOfUtc);
}

/** Whether the mass has moved so far since that a dose is to be signed again. */
export const hasMassMoved = (signedG: number, nowG: number): boolean =>
  Math.abs(nowG / signedG - 1) * 100 >= value('dose.mass-change') - 1e-9;

function oddMass({ massG, species }: Weighed): Remark | null {
  const grown = grownMass(species);
  if (!grown) return null;
  const isHeavy = massG > grown.high * value('dose.mass-heavy');
  if (!isHeavy && massG >= grown.low * value('dose.mass-light')) return null;
  const range = grown.low === grown.high ? plain(grown.low) : `${plain(grown.low)}-${plain(grown.high)}`;
  return asks(
    'mass-odd',
    `${plain(massG)} g is far ${isHeavy ? 'above' : 'below'} what a grown ${grown.name} weighs (${range} g${grown.status === 'memory' ? ', from memory' : ''}). Grams or kilograms?`,
  );
}

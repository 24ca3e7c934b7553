/** What a received film's header says of whose it is, in the ward's words. */
import type { ReceivedFilm } from '../../sync/api.ts';
import { moment } from '../../words/time.ts';
import { takenAt } from '../intake/taken-at.ts';

export interface ReceivedWords {
  /** The patient as the machine has it. */
  readonly who: string;
  /** Part, side and view. */
  readonly what: string;
  readonly when: string;
  readonly from: string;
}

export function receivedWords({ header, sender, receivedAt }: ReceivedFilm): ReceivedWords {
  const name = header.patientName?.replaceAll('^', ' ').trim();
  const who = [name, header.species, header.patientId && `number ${header.patientId}`].filter(Boolean).join(', ');
  const side = header.imageLaterality ?? header.laterality;
  const view = header.view ?? header.viewPosition;
  const what = [header.bodyPart?.toLowerCase(), side && `side ${side}`, view && `view ${view}`]
    .filter(Boolean)
    .join(', ');
  const taken = takenAt(header);
  return {
    who: who || 'no name in the file',
    what: what || 'part and view not said',
    when: taken ? `taken ${moment(taken)}` : `time not said, came ${moment(receivedAt)}`,
    from: header.manufacturer ? `${sender}, ${header.manufacturer}` : sender,
  };
}

/** The film's name in the case: where it came from and when, nobody's name. */
export const nameOfReceived = ({ sender, receivedAt, sha256 }: ReceivedFilm): string =>
  `${sender} ${receivedAt.slice(0, 16).replace('T', ' ')} ${sha256.slice(0, 6)}.dcm`;

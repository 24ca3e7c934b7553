/** The events of a case that came from elsewhere: read strictly, and set against what is recorded here. */
import { InputError } from '@bonewright/fault';
import { z } from 'zod';
import { type CaseEvent, isKnown, type RecordedEvent, readEvent } from '../events.ts';
import { foldCase } from '../fold.ts';
import { EVENTS, type Manifest, parsedJson } from './manifest.ts';

const listed = z.strictObject({ events: z.array(z.unknown()).min(1) });

/** The events in order, all of the case that the manifest names. Throws InputError where one could not be recorded. */
export function broughtEvents(text: string, { caseId, events: count }: Manifest): CaseEvent[] {
  const list = listed.safeParse(parsedJson(text, EVENTS));
  if (!list.success) throw new InputError(`${EVENTS} holds no events`, EVENTS, 'ask for the copy again');
  const events = list.data.events.map((json) => known(readEvent(json)));
  if (events.length !== count || events[0]?.caseId !== caseId)
    throw new InputError('the manifest speaks of other events than the copy holds', EVENTS, 'ask for the copy again');
  const refused = foldCase(events).setAside[0];
  if (refused)
    throw new InputError(
      `event ${refused.event.seq} cannot be recorded: ${refused.because}`,
      EVENTS,
      'ask for the copy again',
    );
  return events;
}

function known(event: RecordedEvent): CaseEvent {
  if (isKnown(event)) return event;
  throw new InputError(
    `event ${event.seq} was written by a newer version of Bonewright`,
    EVENTS,
    'bring this one up to date first',
  );
}

/**
 * What of the brought events is new here, given the texts of both records, word for word and in order.
 * None where this record has them all. Throws InputError where both sides went on: nothing is chosen for anybody.
 */
export function freshOf<E>(brought: readonly E[], broughtTexts: readonly string[], here: readonly string[]): E[] {
  const shorter = Math.min(here.length, broughtTexts.length);
  const same = broughtTexts.slice(0, shorter).findIndex((text, i) => text !== here[i]);
  if (same === -1) return brought.slice(here.length);
  throw new InputError(
    `both sides went on after event ${same}: ${here.length - same} events here and ${broughtTexts.length - same} in the copy are not in the other`,
    '',
    'nothing was changed; write what is missing here as a note, or go on in one place only',
  );
}

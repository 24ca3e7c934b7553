import { type RecordedEvent, readEvent } from '@bonewright/casebook';

/** The event that a stored text holds. A text that holds none is damage on our side, not bad input. */
export function recordedEvent(body: string): RecordedEvent {
  try {
    return readEvent(JSON.parse(body));
  } catch (cause) {
    throw new Error('a recorded event cannot be read; run verify', { cause });
  }
}

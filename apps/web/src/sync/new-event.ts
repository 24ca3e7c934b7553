/** What a stage hands over to be recorded: kind and payload. Id, time, signer and number are added on the way. */
import type { EventDraft, EventKind } from '@bonewright/casebook';

type DraftOf<K extends EventKind> = Extract<EventDraft, { readonly kind: K }>;

export type NewEvent = {
  [K in EventKind]: { readonly kind: K; readonly payload: DraftOf<K>['payload']; readonly why?: string };
}[EventKind];

/** Records at once on this device, then sends; the state that follows is there with the next render. */
export type Append = (events: readonly NewEvent[]) => void;

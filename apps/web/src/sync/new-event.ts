/** What is handed over to be recorded: kind and payload. Id, time, signer and number are added on the way. */
import type { EventDraft, EventKind, PracticeDraft, PracticeKind } from '@bonewright/casebook';

type DraftOf<K extends EventKind> = Extract<EventDraft, { readonly kind: K }>;

export type NewEvent = {
  [K in EventKind]: { readonly kind: K; readonly payload: DraftOf<K>['payload']; readonly why?: string };
}[EventKind];

/** Records at once on this device, then sends; the state that follows is there with the next render. */
export type Append = (events: readonly NewEvent[]) => void;

type PracticeDraftOf<K extends PracticeKind> = Extract<PracticeDraft, { readonly kind: K }>;

/** The same for the practice's own record. */
export type NewPracticeEvent = {
  [K in PracticeKind]: { readonly kind: K; readonly payload: PracticeDraftOf<K>['payload']; readonly why?: string };
}[PracticeKind];

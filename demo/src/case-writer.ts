/** Writes one invented case, event after event, each signed and a little later than the one before. */
import { type CaseEvent, checkEvent, type EventDraft, type EventKind } from '@bonewright/casebook';

type DraftPayload<K extends EventKind> = Extract<EventDraft, { kind: K }>['payload'];

export class CaseWriter {
  readonly events: CaseEvent[] = [];
  readonly caseId: string;
  #timeMs: number;

  constructor(caseId: string, from: Date) {
    this.caseId = caseId;
    this.#timeMs = from.getTime();
  }

  sign<K extends EventKind>(by: string, kind: K, payload: DraftPayload<K>): void {
    const seq = this.events.length + 1;
    const id = `${this.caseId}-${String(seq).padStart(3, '0')}`;
    this.events.push(checkEvent({ schema: 1, id, caseId: this.caseId, seq, at: this.now(), by, kind, payload }));
    this.wait(1);
  }

  wait(minutes: number): void {
    this.#timeMs += minutes * 60_000;
  }

  now(): string {
    return new Date(this.#timeMs).toISOString();
  }
}

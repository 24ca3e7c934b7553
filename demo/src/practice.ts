/** What the invented practice keeps once: its drawer, counted in some weeks ago. */
import { randomBytes } from 'node:crypto';
import {
  checkPracticeEvent,
  foldPractice,
  ID_BYTES,
  idFrom,
  PRACTICE,
  type PracticeDraft,
  SCHEMA_VERSION,
} from '@bonewright/casebook';
import { ConflictError, type Store } from '@bonewright/store';

type Entry = {
  [K in PracticeDraft['kind']]: Pick<Extract<PracticeDraft, { kind: K }>, 'kind' | 'payload'> & {
    readonly why?: string;
  };
}[PracticeDraft['kind']];

/** An entry, who signs it and when. */
export type SignedEntry = Entry & { readonly by: string; readonly at: string };

/** Adds entries to the practice's record, after whatever others recorded meanwhile. */
export async function signInPractice(store: Store, entries: readonly SignedEntry[]): Promise<void> {
  if (entries.length === 0) return;
  const last = (await store.practice.read()).at(-1)?.seq ?? 0;
  const events = entries.map((entry, i) => {
    const head = { schema: SCHEMA_VERSION, id: idFrom(randomBytes(ID_BYTES)), caseId: PRACTICE, seq: last + 1 + i };
    return checkPracticeEvent({ ...entry, ...head });
  });
  try {
    await store.practice.append(events);
  } catch (error) {
    if (!(error instanceof ConflictError)) throw error;
    await signInPractice(store, entries);
  }
}

/** Says that everything of the demonstration stands no longer in the practice's record, where something of it does. */
export async function removeFromPractice(store: Store, at: string): Promise<void> {
  const { stock } = foldPractice(await store.practice.read());
  if (!stock.items.some(({ isDemonstration }) => isDemonstration)) return;
  const why = 'the demonstration was taken out';
  await signInPractice(store, [{ kind: 'demonstration-removed', payload: {}, why, by: 'Bonewright', at }]);
}

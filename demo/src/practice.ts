/** What the invented practice keeps once: its drawer, counted in some weeks ago. */
import { randomBytes } from 'node:crypto';
import {
  checkPracticeEvent,
  foldCase,
  foldPractice,
  ID_BYTES,
  idFrom,
  PRACTICE,
  type PracticeDraft,
  type PracticeState,
  SCHEMA_VERSION,
  type StockThing,
  usesToRecord,
} from '@bonewright/casebook';
import { ConflictError, type Store } from '@bonewright/store';
import { drawer } from './drawer.ts';
import { NURSE, SURGEON } from './patients.ts';

type Entry = {
  [K in PracticeDraft['kind']]: Pick<Extract<PracticeDraft, { kind: K }>, 'kind' | 'payload'> & {
    readonly why?: string;
  };
}[PracticeDraft['kind']];

/** An entry, who signs it and when. */
type SignedEntry = Entry & { readonly by: string; readonly at: string };

/** Adds entries to the practice's record, after whatever others recorded meanwhile. */
async function signInPractice(store: Store, entries: readonly SignedEntry[]): Promise<void> {
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

const DAY_MS = 86_400_000;
const MADE_DAYS_AGO = 40;
const TESTED_DAYS_AGO = 38;
const PUTTY_GOOD_FOR_DAYS = 330;
const OLD_PUTTY_DAYS_OVER = 6;
const LOW_PINS = 3;
const LOW_PUTTY_G = 60;

/** Counts the invented drawer in, as it was before the first of the patients. Leaves a drawer alone that is there. */
export async function stockThePractice(store: Store, now: Date): Promise<void> {
  const { stock } = foldPractice(await store.practice.read());
  if (stock.items.length > 0) return;
  const ago = (days: number): string => new Date(now.getTime() - days * DAY_MS).toISOString();
  const made = { by: NURSE, at: ago(MADE_DAYS_AGO) };
  const entries: SignedEntry[] = [];
  const describe = (itemId: string, thing: StockThing, lowAt: number | null) =>
    entries.push({
      kind: 'stock-described',
      payload: { itemId, thing, lowAt, demonstration: true },
      ...made,
    });
  const receive = (itemId: string, batch: string, amount: number, expires: string | null) =>
    entries.push({ kind: 'stock-received', payload: { itemId, batch, amount, expires }, ...made });
  for (const [i, { id, count, ...row }] of drawer.pins.entries()) {
    describe(id, { use: 'pin', ...row }, LOW_PINS);
    receive(id, `W-${101 + i}`, count, null);
  }
  for (const [i, { id, count, ...row }] of drawer.imPins.entries()) {
    describe(id, { use: 'im-pin', ...row }, 0);
    receive(id, `M-${201 + i}`, count, null);
  }
  for (const { id, material, diameterMm } of drawer.columns)
    describe(id, { use: 'column', material, diameterMm }, null);
  const putty = { itemId: 'epoxy putty', batch: 'P-07' };
  describe(putty.itemId, { use: 'putty', material: 'epoxy-putty' }, LOW_PUTTY_G);
  receive(putty.itemId, 'P-05', 20, ago(OLD_PUTTY_DAYS_OVER).slice(0, 10));
  receive(putty.itemId, putty.batch, 240, ago(-PUTTY_GOOD_FOR_DAYS).slice(0, 10));
  const testedAt = ago(TESTED_DAYS_AGO);
  entries.push({
    kind: 'putty-tested',
    payload: { ...putty, youngMPa: { value: 3150, sd: 160 }, yieldMPa: { value: 33, sd: 3 }, testedAt },
    by: SURGEON,
    at: testedAt,
  });
  await signInPractice(store, entries);
}

/** Takes what a patient's operation used from the drawer. */
export async function countDown(store: Store, caseId: string): Promise<void> {
  const state = foldCase(await store.read(caseId));
  const { stock }: PracticeState = foldPractice(await store.practice.read());
  const at = state.theatre.putty?.hard?.at ?? state.changedAt;
  const uses = usesToRecord(state, stock, at.slice(0, 10));
  await signInPractice(
    store,
    uses.map((payload) => ({ kind: 'stock-used', payload, by: NURSE, at })),
  );
}

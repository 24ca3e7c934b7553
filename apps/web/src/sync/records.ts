/** The cases and the practice's record as open on this page, the board, and what keeps both up to date: the server's event stream and other pages. */
import { boardRow, laterNumber, nextCaseNumber, PRACTICE } from '@bonewright/casebook';
import { getBoard, Refused, Unreachable } from './api.ts';
import { type Board, database } from './database.ts';
import { refreshInbox } from './inbox.ts';
import type { NewEvent } from './new-event.ts';
import { onOtherPages } from './other-pages.ts';
import { recordsWaiting } from './outbox.ts';
import { caseKind, type OfCase, type OfPractice, practiceKind } from './record-kind.ts';
import { SyncedRecord } from './synced-record.ts';

export interface BoardSnapshot {
  readonly board: Board | null;
  /** Why the list may be old; null where the server has just said it. */
  readonly trouble: string | null;
}

export type CaseRecord = SyncedRecord<OfCase>;
export type PracticeRecord = SyncedRecord<OfPractice>;

const open = new Map<string, CaseRecord>();
let practice: PracticeRecord | null = null;

/** The record of a case, opened once a page. */
export function caseRecord(caseId: string): CaseRecord {
  const record = open.get(caseId) ?? new SyncedRecord(caseKind(caseId));
  open.set(caseId, record);
  return record;
}

/** What the practice keeps once, opened once a page. */
export function practiceRecord(): PracticeRecord {
  practice ??= new SyncedRecord(practiceKind);
  return practice;
}

const allOpen = (): readonly (CaseRecord | PracticeRecord)[] => [...open.values(), ...(practice ? [practice] : [])];

const findOpen = (id: string): CaseRecord | PracticeRecord | null | undefined =>
  id === PRACTICE ? practice : open.get(id);

/** Opens a case that nobody has recorded yet, with its first entries. */
export function startCase(caseId: string, entries: readonly NewEvent[]): void {
  const record = new SyncedRecord(caseKind(caseId), { isNew: true });
  open.set(caseId, record);
  record.append(entries);
}

let board: BoardSnapshot = { board: null, trouble: null };
const boardListeners = new Set<() => void>();

export const boardSnapshot = (): BoardSnapshot => board;

export function subscribeBoard(listener: () => void): () => void {
  boardListeners.add(listener);
  return () => boardListeners.delete(listener);
}

export async function refreshBoard(): Promise<void> {
  try {
    const said = await getBoard();
    setBoard({ board: await withWaitingCases(said), trouble: null });
    await keepBoard(said);
  } catch (error) {
    if (!(error instanceof Unreachable || error instanceof Refused)) throw error;
    const here = board.board ?? (await keptBoard()) ?? emptyBoard();
    setBoard({ board: await withWaitingCases(here), trouble: error.message });
  }
}

/** Cases that were started while the server could not be reached stand on the board too. */
async function withWaitingCases(said: Board): Promise<Board> {
  const ids = (await recordsWaiting().catch(() => [])).filter(
    (id) => id !== PRACTICE && !said.cases.some(({ caseId }) => caseId === id),
  );
  await Promise.all(ids.map((id) => caseRecord(id).opened));
  const rows = ids.map((id) => boardRow(caseRecord(id).snapshot().state)).filter((row) => row !== null);
  const cases = [...rows, ...said.cases];
  const numbers = rows.map(({ number }) => number);
  const nextNumber = laterNumber(said.nextNumber, nextCaseNumber(numbers, new Date().getFullYear()));
  return { ...said, cases, nextNumber };
}

const emptyBoard = (): Board => ({
  cases: [],
  nextNumber: nextCaseNumber([], new Date().getFullYear()),
  preparing: false,
});
const BOARD_KEY = 'last';

async function keepBoard(said: Board): Promise<void> {
  const db = await database().catch(() => null);
  await db?.put('board', said, BOARD_KEY);
}

async function keptBoard(): Promise<Board | undefined> {
  const db = await database().catch(() => null);
  return db?.get('board', BOARD_KEY);
}

function setBoard(next: BoardSnapshot): void {
  board = next;
  for (const listener of boardListeners) listener();
}

/** Starts once: sends what an earlier page left waiting, listens to the server and to the other pages. */
export async function startSync(): Promise<void> {
  listenToServer();
  onOtherPages((id) => void findOpen(id)?.readAgain());
  addEventListener('online', () => sendAll());
  for (const id of await recordsWaiting().catch(() => [])) {
    if (id === PRACTICE) practiceRecord();
    else caseRecord(id);
  }
  await refreshBoard();
}

const sendAll = (): void => {
  for (const record of allOpen()) void record.send();
};

let stream: EventSource | null = null;

/** Also after somebody signed in again: what waits is sent, what was missed is read. */
export function listenToServer(): void {
  stream?.close();
  stream = new EventSource('/api/events');
  // Also after every pause: what happened meanwhile is read again.
  stream.addEventListener('hello', () => {
    sendAll();
    for (const record of allOpen()) void record.refresh();
    void refreshBoard();
    void refreshInbox();
  });
  stream.addEventListener('inbox', () => void refreshInbox());
  stream.addEventListener('change', ({ data }) => {
    const change: unknown = JSON.parse(data);
    if (typeof change === 'object' && change !== null && 'caseId' in change && typeof change.caseId === 'string')
      void findOpen(change.caseId)?.refresh();
    void refreshBoard();
  });
  stream.addEventListener('reset', () => {
    for (const record of allOpen()) void record.startOver();
    void refreshBoard();
  });
}

/** A case, the board and the practice's own record as React sees them. */
import { useSyncExternalStore } from 'react';
import type { OfCase, OfPractice } from './record-kind.ts';
import { type BoardSnapshot, boardSnapshot, caseRecord, practiceRecord, subscribeBoard } from './records.ts';
import type { Snapshot } from './synced-record.ts';

export type CaseSnapshot = Snapshot<OfCase>;

export function useCase(caseId: string): CaseSnapshot {
  const record = caseRecord(caseId);
  return useSyncExternalStore(record.subscribe, record.snapshot);
}

export const useBoard = (): BoardSnapshot => useSyncExternalStore(subscribeBoard, boardSnapshot);

/** What the practice keeps once; its entries go to `practiceRecord().append`. */
export function usePractice(): Snapshot<OfPractice> {
  const record = practiceRecord();
  return useSyncExternalStore(record.subscribe, record.snapshot);
}

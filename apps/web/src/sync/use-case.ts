/** A case and the board as React sees them. */
import { useSyncExternalStore } from 'react';
import type { CaseSnapshot } from './case-record.ts';
import { type BoardSnapshot, boardSnapshot, caseRecord, subscribeBoard } from './records.ts';

export function useCase(caseId: string): CaseSnapshot {
  const record = caseRecord(caseId);
  return useSyncExternalStore(record.subscribe, record.snapshot);
}

export const useBoard = (): BoardSnapshot => useSyncExternalStore(subscribeBoard, boardSnapshot);

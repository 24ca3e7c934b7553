/** Counts the practice's drawer down as pins go in and putty is mixed on this tablet. */
import { type CaseState, usesToRecord } from '@bonewright/casebook';
import { useEffect } from 'react';
import { caseRecord, practiceRecord } from '../sync/records.ts';
import { usePractice } from '../sync/use-case.ts';
import { today } from '../words/time.ts';

export function useStockCount(state: CaseState): void {
  const { state: practice, refused } = usePractice();
  // What another tablet entered, it counts itself; after a refusal somebody has to look first.
  const isDue = state.seq > 0 && refused.length === 0 && caseRecord(state.caseId).isOwn(state.seq);
  useEffect(() => {
    if (!isDue) return;
    const uses = usesToRecord(state, practice.stock, today());
    if (uses.length > 0) practiceRecord().append(uses.map((payload) => ({ kind: 'stock-used', payload })));
  }, [isDue, state, practice]);
}

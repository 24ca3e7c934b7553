import { checkPracticeEvent, type PracticeDraft, type PracticeEvent } from '../events.ts';

export const WIRE = { use: 'pin', diameterMm: 1, kind: 'smooth', material: 'steel-cold-worked' } as const;

export type Entry = {
  [K in PracticeDraft['kind']]: readonly [K, Extract<PracticeDraft, { kind: K }>['payload']];
}[PracticeDraft['kind']];

/** The practice's record with these entries, each signed. */
export function record(...entries: readonly Entry[]): PracticeEvent[] {
  return entries.map(([kind, payload], i) =>
    checkPracticeEvent({
      ...{ schema: 1, id: `practice-${i + 1}`, caseId: 'practice', seq: i + 1, at: '2026-11-25T23:10:00Z' },
      ...{ by: 'T. Okafor', kind, payload },
    }),
  );
}

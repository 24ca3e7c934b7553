/** The practice's own record: one sequence beside the cases, of which only the last event's place is kept. */
import {
  applyPractice,
  foldPractice,
  PRACTICE,
  type PracticeEvent,
  type PracticeState,
  type RecordedPracticeEvent,
  readPracticeEvent,
} from '@bonewright/casebook';
import type { Engine } from '../engine.ts';
import type { PracticeRecord } from '../store.ts';
import { append } from './append.ts';
import { readRecord } from './read.ts';
import { RecentFolds } from './recent-folds.ts';
import { NO_HEAD, type RecordKind } from './record-kind.ts';

const practiceRecordKind: RecordKind<PracticeEvent, RecordedPracticeEvent, PracticeState> = {
  read: readPracticeEvent,
  fold: foldPractice,
  apply: applyPractice,
  headOf: async (tx, id) => {
    const head = await tx
      .selectFrom('practice')
      .select(['seq', 'position', 'hash'])
      .where('id', '=', id)
      .executeTakeFirst();
    return head ?? NO_HEAD;
  },
  write: async (tx, _, head) => {
    await tx
      .insertInto('practice')
      .values({ id: PRACTICE, ...head })
      .onConflict((c) => c.column('id').doUpdateSet(head))
      .execute();
  },
  requireReady: async () => undefined,
};

export function practiceRecord(engine: Engine, now: () => string): PracticeRecord {
  const folds = new RecentFolds<PracticeState>();
  return {
    append: (events) => append(engine, practiceRecordKind, events, now(), folds),
    read: (after = 0) => readRecord(engine.db, practiceRecordKind, PRACTICE, after),
  };
}

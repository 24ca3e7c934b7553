/** Entries that the server would not take: what they say, why, and what can be done. */
import { checkEvent, SCHEMA_VERSION, sentenceOf } from '@bonewright/casebook';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import type { Waiting } from '../sync/record-kind.ts';
import type { CaseRecord } from '../sync/records.ts';

interface RefusedEntriesProps {
  readonly record: CaseRecord;
  readonly refused: readonly Waiting[];
}

export function RefusedEntries({ record, refused }: RefusedEntriesProps) {
  if (refused.length === 0) return null;
  return (
    <div className="notices">
      {refused.map((entry) => (
        <div key={entry.id} className="callout callout-stop" role="alert">
          <strong>
            <VerdictMark verdict="stop" />
            Not recorded: {wordsOf(entry)}
          </strong>
          <p>{entry.refused} It is kept on this tablet until you decide.</p>
          <p className="callout-actions">
            <button type="button" className="button" onClick={() => void record.tryAgain(entry)}>
              Try again
            </button>
            <button type="button" className="button" onClick={() => void record.giveUp(entry)}>
              Take it out
            </button>
          </p>
        </div>
      ))}
    </div>
  );
}

function wordsOf({ refused: _, ...entry }: Waiting): string {
  return sentenceOf(checkEvent({ ...entry, schema: SCHEMA_VERSION, seq: 1 }));
}

/** Patients, a line each, below the names of the stages; and a way to those that are not shown yet. */
import { type BoardRow, STAGES } from '@bonewright/casebook';
import { useState } from 'react';
import type { Board } from '../sync/database.ts';
import { PatientRow } from './patient-row.tsx';

interface PatientListProps {
  readonly first: Board;
  /** Reads the page after that place. */
  readonly readMore: (before: number) => Promise<Board>;
  readonly now: Date;
}

interface Later {
  readonly rows: readonly BoardRow[];
  readonly more: number | null;
}

export function PatientList({ first, readMore, now }: PatientListProps) {
  const [later, setLater] = useState<Later | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  const shown = new Set(first.cases.map(({ caseId }) => caseId));
  const rows = [...first.cases, ...(later?.rows ?? []).filter(({ caseId }) => !shown.has(caseId))];
  const more = later ? later.more : (first.more ?? null);
  const read = async (before: number): Promise<void> => {
    try {
      const page = await readMore(before);
      setLater({ rows: [...(later?.rows ?? []), ...page.cases], more: page.more ?? null });
      setWhy(null);
    } catch (error) {
      setWhy(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <>
      <div className="board-columns" aria-hidden="true">
        <span>patient</span>
        <span className="board-stages">
          {STAGES.map((stage) => (
            <span key={stage}>{stage}</span>
          ))}
        </span>
        <span>due and next</span>
        <span>plan</span>
      </div>
      <ul className="board">
        {rows.map((row) => (
          <PatientRow key={row.caseId} row={row} now={now} />
        ))}
      </ul>
      {more !== null && (
        <p className="board-more">
          <button type="button" className="button" onClick={() => void read(more)}>
            Show more, changed earlier
          </button>
        </p>
      )}
      {why && <p className="field-why">They could not be read: {why}.</p>}
    </>
  );
}

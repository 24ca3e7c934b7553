/** Patients of whom nothing more is expected. */
import { useEffect, useState } from 'react';
import { getEnded } from '../sync/api.ts';
import type { Board } from '../sync/database.ts';
import { PatientList } from './patient-list.tsx';

/** Read again whenever the board is. */
export function EndedPatients({ now, board }: { readonly now: Date; readonly board: Board }) {
  const [ended, setEnded] = useState<Board | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a board that was read again means that something changed.
  useEffect(() => {
    getEnded(null).then(
      (page) => {
        setEnded(page);
        setWhy(null);
      },
      (error: Error) => setWhy(error.message),
    );
  }, [board]);
  if (why) return <p className="field-why">The patients that ended could not be read: {why}.</p>;
  if (!ended) return <p className="quiet board-loading">Reading.</p>;
  if (ended.cases.length === 0)
    return (
      <p className="quiet board-loading">
        None yet. A patient stands here once it has gone and its outcomes are written.
      </p>
    );
  return <PatientList first={ended} readMore={getEnded} now={now} />;
}

/** Every patient, one line each: who, how far along the path, what to do next. */
import './board.css';
import { type BoardRow, STAGES } from '@bonewright/casebook';
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { BoardWho } from '../people/signed-by.tsx';
import { ThemeSwitch } from '../shell/theme-switch.tsx';
import { useTitle } from '../shell/use-title.ts';
import { useInbox } from '../sync/inbox.ts';
import { refreshBoard } from '../sync/records.ts';
import { useBoard } from '../sync/use-case.ts';
import { dueStanding, longMoment } from '../words/time.ts';
import { BeginEmpty } from './begin-empty.tsx';
import { BoardFiles } from './board-files.tsx';
import { EmptyBoard } from './empty-board.tsx';
import { PatientRow } from './patient-row.tsx';

const MINUTE_MS = 60_000;

export function BoardPage() {
  const { board, trouble } = useBoard();
  const waiting = useInbox().films.length;
  const now = useNow();
  useTitle('Patients');
  useEffect(() => void refreshBoard(), []);
  const cases = board?.cases ?? [];
  const isDemonstration = cases.some(({ demonstration }) => demonstration);
  return (
    <div className="page">
      <header className="head">
        <h1>Patients</h1>
        <div className="head-right">
          <p className="head-state">
            {isDemonstration && <span>Demonstration</span>}
            <span>{longMoment(now)}</span>
            <span>
              <Link href="/formulary" className="signer">
                Formulary
              </Link>
              {' · '}
              <Link href="/register" className="signer">
                Controlled drugs
              </Link>
            </span>
            <BoardWho />
          </p>
          <ThemeSwitch />
          {isDemonstration && <BeginEmpty />}
          <Link href="/new" className="button button-main">
            Start a case
          </Link>
        </div>
      </header>
      <main id="main" tabIndex={-1}>
        {trouble !== null && (
          <div className="callout callout-watch notices" role="status">
            <strong>
              <VerdictMark verdict="watch" />
              This list may be old
            </strong>
            <p>
              It was not read again: {trouble}. Cases can be opened and started; what is done is kept on this tablet.
            </p>
          </div>
        )}
        {waiting > 0 && (
          <p className="board-received" role="status">
            <strong>{waiting === 1 ? '1 film waits' : `${waiting} films wait`} from the X-ray machine.</strong>{' '}
            {waiting === 1
              ? 'Open its patient at Films to take it in.'
              : 'Open their patient at Films to take them in.'}
          </p>
        )}
        {board === null && <p className="quiet board-loading">Reading the list of patients.</p>}
        {board?.preparing && (
          <p className="quiet board-loading" role="status">
            The invented patients and their films are being drawn; each appears here when it is done.
          </p>
        )}
        {board !== null && cases.length === 0 && <EmptyBoard isPreparing={board.preparing} />}
        {cases.length > 0 && (
          <>
            <DueInAll cases={cases} now={now} />
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
              {cases.map((row) => (
                <PatientRow key={row.caseId} row={row} now={now} />
              ))}
            </ul>
            <p className="board-foot">
              <span>
                Solid: done. Dots: ahead.
                {isDemonstration &&
                  ' Patients marked Demonstration are invented; their films are drawn by the program.'}
              </span>
              <span className="board-files">
                <BoardFiles />
                <kbd>Tab</kbd> choose <kbd>Enter</kbd> open
              </span>
            </p>
          </>
        )}
      </main>
    </div>
  );
}

/** The whole board in one line: what is overdue, what is due today. */
function DueInAll({ cases, now }: { readonly cases: readonly BoardRow[]; readonly now: Date }) {
  const standings = cases.flatMap(({ due = [] }) => due.map(({ on }) => dueStanding(on, now)));
  const [overdue, today] = (['overdue', 'today'] as const).map((one) => standings.filter((is) => is === one).length);
  return (
    <p className="board-due-all">
      {overdue ? (
        <strong className="verdict verdict-stop">
          <VerdictMark verdict="stop" />
          {overdue} overdue
        </strong>
      ) : (
        <span>nothing overdue</span>
      )}
      <span>{today} due today</span>
      <span className="quiet">{cases.length === 1 ? '1 patient' : `${cases.length} patients`}</span>
    </p>
  );
}

function useNow(): Date {
  const [now, setNow] = useState(() => new Date());
  useEffect(() => {
    const tick = setInterval(() => setNow(new Date()), MINUTE_MS);
    return () => clearInterval(tick);
  }, []);
  return now;
}

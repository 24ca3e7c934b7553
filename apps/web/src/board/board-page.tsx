/** The patients in our care, one line each: who, how far along the path, what to do next. Others are found by words. */
import './board.css';
import type { BoardRow } from '@bonewright/casebook';
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { BoardWho } from '../people/signed-by.tsx';
import { ThemeSwitch } from '../shell/theme-switch.tsx';
import { useTitle } from '../shell/use-title.ts';
import { getMore } from '../sync/api.ts';
import type { Board } from '../sync/database.ts';
import { useInbox } from '../sync/inbox.ts';
import { refreshBoard } from '../sync/records.ts';
import { useBoard } from '../sync/use-case.ts';
import { dueStanding, longMoment } from '../words/time.ts';
import { BoardFiles } from './board-files.tsx';
import { DemonstrationButtons } from './demonstration-buttons.tsx';
import { EmptyBoard } from './empty-board.tsx';
import { EndedPatients } from './ended-patients.tsx';
import { Find } from './find.tsx';
import { FoundList } from './found-list.tsx';
import { PatientList } from './patient-list.tsx';
import { PracticePages } from './practice-pages.tsx';
import { useFound } from './use-found.ts';

type Shown = 'live' | 'ended';
const MINUTE_MS = 60_000;

export function BoardPage() {
  const { board, trouble } = useBoard();
  const waiting = useInbox().films.length;
  const now = useNow();
  useTitle('Patients');
  useEffect(() => void refreshBoard(), []);
  const cases = board?.cases ?? [];
  const [question, setQuestion] = useState('');
  const [shows, setShows] = useState<Shown>('live');
  const found = useFound(question);
  const isListing = question.trim() === '';
  const hasAny = cases.length > 0 || (board?.ended ?? 0) > 0;
  const isDemonstration = cases.some(({ demonstration }) => demonstration);
  return (
    <div className="page">
      <header className="head">
        <div>
          <h1>Patients</h1>
          <PracticePages />
        </div>
        <div className="head-right">
          <p className="head-state">
            {isDemonstration && <span>Demonstration</span>}
            <span>{longMoment(now)}</span>
            <BoardWho />
          </p>
          <ThemeSwitch />
          {isDemonstration && <DemonstrationButtons />}
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
        {board !== null && hasAny && <BoardTools {...{ question, setQuestion, shows, setShows, board }} />}
        {question.trim() !== '' && <FoundList {...found} question={question} />}
        {board !== null && isListing && shows === 'ended' && <EndedPatients now={now} board={board} />}
        {board !== null && isListing && shows === 'live' && cases.length === 0 && (
          <EmptyBoard isPreparing={board.preparing} />
        )}
        {board !== null && isListing && shows === 'live' && cases.length > 0 && (
          <>
            <DueInAll cases={cases} now={now} />
            <PatientList first={board} readMore={getMore} now={now} />
          </>
        )}
        {hasAny && (
          <p className="board-foot">
            <span>
              Solid: done. Dots: ahead.
              {isDemonstration && ' Patients marked Demonstration are invented; their films are drawn by the program.'}
            </span>
            <span className="board-files">
              <BoardFiles />
              <kbd>/</kbd> find <kbd>Tab</kbd> choose <kbd>Enter</kbd> open
            </span>
          </p>
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

interface BoardToolsProps {
  readonly question: string;
  readonly setQuestion: (question: string) => void;
  readonly shows: Shown;
  readonly setShows: (shows: Shown) => void;
  readonly board: Board;
}

function BoardTools({ question, setQuestion, shows, setShows, board }: BoardToolsProps) {
  const choice = (which: Shown, words: string, count: number | undefined) => (
    <button type="button" className="button-small" aria-pressed={shows === which} onClick={() => setShows(which)}>
      {words}
      {count !== undefined && ` ${count}`}
    </button>
  );
  return (
    <div className="board-tools">
      <Find question={question} onChange={setQuestion} />
      {/* biome-ignore lint/a11y/useSemanticElements: two buttons, not fields of a form. */}
      <div className="board-choice" role="group" aria-label="Which patients">
        {choice('live', 'In our care', board.live)}
        {choice('ended', 'Ended', board.ended)}
      </div>
    </div>
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

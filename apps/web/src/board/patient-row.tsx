import { type BoardRow, type Due, STAGES } from '@bonewright/casebook';
import { Link } from 'wouter';
import { Animal } from '../animals/animal.tsx';
import { VerdictMark, VerdictWord } from '../drawing/verdict-mark.tsx';
import { figure } from '../plan/words.ts';
import { capital, massWords } from '../words/patient.ts';
import { dayWords, dueStanding, moment } from '../words/time.ts';

interface PatientRowProps {
  readonly row: BoardRow;
  readonly now: Date;
}

export function PatientRow({ row, now }: PatientRowProps) {
  return (
    <li className="board-row">
      <div className="board-patient">
        <Animal species={row.species} width={98} />
        <div>
          <h2>
            <Link href={`/case/${row.caseId}/${row.stage}`} className="board-link">
              {capital(row.species)}
              {row.name && <span className="board-name">, {row.name}</span>}
            </Link>
          </h2>
          <p>{`${massWords(row.massG)}, ${row.side} ${row.bone}`}</p>
          <p className="caption">
            case {row.number}
            {row.demonstration && ' · Demonstration'}
          </p>
        </div>
      </div>
      <Trail row={row} now={now} />
      <div className="board-next">
        {row.due?.map((due) => (
          <DueLine key={`${due.on} ${due.what}`} due={due} now={now} />
        ))}
        {row.next.length === 0 && !row.due?.length && <p className="quiet">Nothing is due.</p>}
        {row.next.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      <div className="board-plan">
        {row.plan ? (
          <>
            <p>
              <VerdictWord verdict={row.plan.verdict} />
            </p>
            <p className="caption">
              {row.plan.label}, worst margin <b>{figure(row.plan.worst.p05, 2)}</b>
            </p>
          </>
        ) : (
          <p className="quiet">no plan chosen</p>
        )}
      </div>
    </li>
  );
}

/** When, what and who; what is overdue says so with its mark and word. */
function DueLine({ due: { what, on, who }, now }: { readonly due: Due; readonly now: Date }) {
  const standing = dueStanding(on, now);
  return (
    <p className="board-due">
      <strong className={standing === 'ahead' ? undefined : `verdict-${standing === 'overdue' ? 'stop' : 'watch'}`}>
        {standing !== 'ahead' && <VerdictMark verdict={standing === 'overdue' ? 'stop' : 'watch'} />}
        {standing === 'overdue' ? `overdue, ${dayWords(on)}` : standing === 'today' ? 'today' : dayWords(on)}
      </strong>
      <span>{what}</span>
      <span className="caption">{who}</span>
    </p>
  );
}

const COLUMN = 88;
const WIDTH = COLUMN * STAGES.length;

/** Each dot stands in the middle of its stage's column, below the stage's name at the head of the board. */
function Trail({ row, now }: PatientRowProps) {
  const here = STAGES.indexOf(row.stage);
  const x = (i: number): number => COLUMN / 2 + i * COLUMN;
  const ahead = STAGES.slice(here + 1);
  return (
    <div className="board-trail">
      <p className="board-stage">
        {capital(row.stage)}
        <span className="caption">, changed {moment(row.changedAt, now)}</span>
      </p>
      <svg viewBox={`0 0 ${WIDTH} 22`} aria-hidden="true">
        {here > 0 && <path d={`M${x(0)} 11H${x(here) - 9}`} className="trail-done" />}
        {ahead.length > 0 && <path d={`M${x(here) + 12} 11H${x(STAGES.length - 1)}`} className="trail-ahead" />}
        {STAGES.map((stage, i) =>
          i === here ? (
            <g key={stage} className="dot-here">
              <circle cx={x(i)} cy="11" r="8" />
              <circle cx={x(i)} cy="11" r="3.4" />
            </g>
          ) : (
            <circle key={stage} cx={x(i)} cy="11" r="4.5" className={i < here ? 'dot-done' : 'dot-ahead'} />
          ),
        )}
      </svg>
      {ahead.length > 0 && <p className="caption board-ahead">then {ahead.join(', ')}</p>}
    </div>
  );
}

/** The seven stages as a trail: what is done is solid, here is ringed, what lies ahead is dotted. Any can be opened. */
import { STAGES, type Stage } from '@bonewright/casebook';
import { Link } from 'wouter';
import { useIsNarrow } from '../plan/use-is-narrow.ts';
import { capital } from '../words/patient.ts';

interface StagePathProps {
  readonly caseId: string;
  /** The furthest stage that the case has reached. */
  readonly reached: Stage;
  readonly open: Stage;
  /** Days since the case was opened, that day being 1. */
  readonly day: number;
}

/** On a phone the stage and the day stand alone; the path unfolds when it is asked for. */
export function StagePath(props: StagePathProps) {
  const isNarrow = useIsNarrow();
  if (!isNarrow) return <Trail {...props} />;
  return (
    <details key={props.open} className="stage-fold">
      <summary>
        <b>{capital(props.open)}</b>, day {props.day}
        <span className="quiet"> · all stages</span>
      </summary>
      <Trail {...props} />
    </details>
  );
}

function Trail({ caseId, reached, open }: StagePathProps) {
  const reachedIndex = STAGES.indexOf(reached);
  return (
    <nav aria-label="Stages of this case" className="stage-path">
      <ol>
        {STAGES.map((stage, i) => (
          <li key={stage} data-trail={i <= reachedIndex ? 'done' : 'ahead'}>
            <Link href={`/case/${caseId}/${stage}`} aria-current={stage === open ? 'page' : undefined}>
              <Dot isHere={stage === open} isDone={i <= reachedIndex} />
              <span>{capital(stage)}</span>
              {i < reachedIndex && <span className="sr-only">, done</span>}
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}

function Dot({ isHere, isDone }: { readonly isHere: boolean; readonly isDone: boolean }) {
  return (
    <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
      {isHere ? (
        <g className="dot-here">
          <circle cx="10" cy="10" r="7.5" />
          <circle cx="10" cy="10" r="3.2" />
        </g>
      ) : (
        <circle cx="10" cy="10" r="4" className={isDone ? 'dot-done' : 'dot-ahead'} />
      )}
    </svg>
  );
}

/** The seven stages as a trail: what is done is solid, here is ringed, what lies ahead is dotted. Any can be opened. */
import { STAGES, type Stage } from '@bonewright/casebook';
import { Link } from 'wouter';
import { capital } from '../words/patient.ts';

interface StagePathProps {
  readonly caseId: string;
  /** The furthest stage that the case has reached. */
  readonly reached: Stage;
  readonly open: Stage;
}

export function StagePath({ caseId, reached, open }: StagePathProps) {
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

/** A case open at one of its stages. */
import type { CaseState, Stage } from '@bonewright/casebook';
import { lazy, type ReactNode, Suspense } from 'react';
import { useFilmPictures } from '../films/picture/use-film-pictures.ts';
import { CaseHead } from '../shell/case-head.tsx';
import { NotHere } from '../shell/not-here.tsx';
import type { Append } from '../sync/new-event.ts';
import { caseRecord } from '../sync/records.ts';
import { type CaseSnapshot, useCase } from '../sync/use-case.ts';
import { HeadAction } from './head-action.tsx';
import { RefusedEntries } from './refused-entries.tsx';

const AdmissionStage = lazy(() =>
  import('../admission/admission-stage.tsx').then(({ AdmissionStage }) => ({ default: AdmissionStage })),
);
const FilmsStage = lazy(() => import('../films/films-stage.tsx').then(({ FilmsStage }) => ({ default: FilmsStage })));
const PlanStage = lazy(() => import('../plan/plan-stage.tsx').then(({ PlanStage }) => ({ default: PlanStage })));

const RechecksStage = lazy(() =>
  import('../rechecks/rechecks-stage.tsx').then(({ RechecksStage }) => ({ default: RechecksStage })),
);
const RecoveryStage = lazy(() =>
  import('../recovery/recovery-stage.tsx').then(({ RecoveryStage }) => ({ default: RecoveryStage })),
);
const ReleaseStage = lazy(() =>
  import('../release/release-stage.tsx').then(({ ReleaseStage }) => ({ default: ReleaseStage })),
);
const TheatreStage = lazy(() =>
  import('../theatre/theatre-stage.tsx').then(({ TheatreStage }) => ({ default: TheatreStage })),
);

interface CasePageProps {
  readonly caseId: string;
  readonly stage: Stage;
}

export function CasePage({ caseId, stage }: CasePageProps) {
  const snapshot = useCase(caseId);
  const { found, state, saved, refused } = snapshot;
  if (found === 'absent')
    return (
      <NotHere sentence="There is no such case here. It may be on another machine, or it was a demonstration that has been taken out." />
    );
  if (found === 'unreachable')
    return <NotHere sentence="The server does not answer, and this tablet has not opened the case before." />;
  if (found === 'looking' || !state.patient)
    return (
      <p className="page quiet" role="status">
        Reading the case.
      </p>
    );
  return (
    <div className="page">
      <CaseHead state={state} saved={saved} open={stage} action={<HeadAction state={state} stage={stage} />} />
      <main id="main" tabIndex={-1}>
        <RefusedEntries record={caseRecord(caseId)} refused={refused} />
        <Suspense
          fallback={
            <p className="quiet" role="status">
              Opening.
            </p>
          }
        >
          {pageOf(stage, snapshot)}
        </Suspense>
      </main>
    </div>
  );
}

function pageOf(stage: Stage, { state, recorded }: CaseSnapshot): ReactNode {
  const record = caseRecord(state.caseId);
  const { append } = record;
  if (stage === 'admission') return <AdmissionStage state={state} recorded={recorded} append={append} />;
  if (stage === 'films') return <FilmsStage state={state} append={append} isOwn={record.isOwn} />;
  if (stage === 'plan') return <PlanPage state={state} append={append} />;
  if (stage === 'theatre') return <TheatreStage state={state} recorded={recorded} append={append} />;
  if (stage === 'rechecks') return <RechecksStage state={state} recorded={recorded} append={append} />;
  if (stage === 'recovery') return <RecoveryStage state={state} recorded={recorded} append={append} />;
  return <ReleaseStage state={state} recorded={recorded} append={append} />;
}

function PlanPage({ state, append }: { readonly state: CaseState; readonly append: Append }) {
  const films = useFilmPictures(state.films);
  return <PlanStage state={state} append={append} films={films} />;
}

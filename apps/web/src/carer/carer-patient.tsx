/** One patient on a carer's phone: today's tasks, weight, food, pins by words, photographs, a question, and when to ring. */
import type { CaseState } from '@bonewright/casebook';
import { Link } from 'wouter';
import { Animal } from '../animals/animal.tsx';
import { Feed } from '../care/feed.tsx';
import { Photographs } from '../care/photographs.tsx';
import { Questions } from '../care/questions.tsx';
import { Weigh } from '../care/weigh.tsx';
import { RefusedEntries } from '../case/refused-entries.tsx';
import { NotHere } from '../shell/not-here.tsx';
import { SavedWords } from '../shell/saved-words.tsx';
import { useTitle } from '../shell/use-title.ts';
import { caseRecord } from '../sync/records.ts';
import { useCase } from '../sync/use-case.ts';
import { capital } from '../words/patient.ts';
import { longMoment, moment } from '../words/time.ts';
import { PinWords } from './pin-words.tsx';
import { RingUs } from './ring-us.tsx';
import { Tasks } from './tasks.tsx';

export function CarerPatient({ caseId }: { readonly caseId: string }) {
  const { found, state, saved, refused } = useCase(caseId);
  const patient = state.patient?.value;
  useTitle(patient ? `${capital(patient.species)} ${patient.number}` : 'Your patients');
  if (found === 'absent') return <NotHere sentence="This patient is not one of yours." />;
  if (found === 'unreachable')
    return <NotHere sentence="The server does not answer, and this phone has not opened the patient before." />;
  if (!patient)
    return (
      <p className="page quiet" role="status">
        Reading the patient.
      </p>
    );
  const { append } = caseRecord(caseId);
  return (
    <div className="page carer">
      <header className="carer-head">
        <Animal species={patient.species} width={72} />
        <div>
          <h1>{`${capital(patient.species)} ${patient.number}`}</h1>
          <p>{[patient.name, longMoment(new Date())].filter(Boolean).join(', ')}</p>
          <p className="carer-note">
            <SavedWords saved={saved} />
            {' · '}
            <Link href="/">all your patients</Link>
          </p>
        </div>
      </header>
      <main id="main" tabIndex={-1}>
        <RefusedEntries record={caseRecord(caseId)} refused={refused} />
        <Tasks state={state} append={append} />
        <LastWeight state={state} />
        <Weigh state={state} append={append} />
        <Feed state={state} append={append} />
        <PinWords state={state} append={append} />
        <Photographs state={state} append={append} />
        <Questions state={state} append={append} />
        <RingUs state={state} />
      </main>
    </div>
  );
}

function LastWeight({ state }: { readonly state: CaseState }) {
  const last = state.care.weights.at(-1);
  if (!last) return null;
  const { massG, at, withFrame } = last.value;
  return (
    <p className="carer-weight">
      <b>{massG} g</b> {withFrame ? 'with the frame, ' : ''}
      {moment(at)}
    </p>
  );
}

/** The head of every page of a case: who, where on the path, whether it is saved, and the one thing to do next. */
import { type CaseState, type Stage, stageOf } from '@bonewright/casebook';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { Animal } from '../animals/animal.tsx';
import { SignedBy } from '../people/signed-by.tsx';
import type { Saved } from '../sync/synced-record.ts';
import { ageAndSex, capital, massWords } from '../words/patient.ts';
import { dayOf, moment } from '../words/time.ts';
import { SavedWords } from './saved-words.tsx';
import { StagePath } from './stage-path.tsx';
import { ThemeSwitch } from './theme-switch.tsx';
import { useTitle } from './use-title.ts';

interface CaseHeadProps {
  readonly state: CaseState;
  readonly saved: Saved;
  readonly open: Stage;
  readonly action?: ReactNode;
}

export function CaseHead({ state, saved, open, action }: CaseHeadProps) {
  const patient = state.patient?.value;
  useTitle(`${capital(patient?.species ?? 'Patient')} ${patient?.number ?? ''}, ${open}`);
  return (
    <header className="head case-head">
      <div className="head-who">
        <Link href="/" className="head-animal" aria-label="All patients">
          <Animal species={patient?.species ?? ''} width={56} />
        </Link>
        <div>
          <h1>
            {capital(patient?.species ?? 'Patient')}{' '}
            <span className="case-number">{[patient?.number, patient?.name].filter(Boolean).join(', ')}</span>
          </h1>
          {patient && (
            <p className="head-facts">
              <b>{massWords(patient.massG)}</b>
              {patient.massG !== null && patient.weighedAt !== null ? ` weighed ${moment(patient.weighedAt)}` : ''}
              {` · ${[ageAndSex(patient.ageClass, patient.sex), `${patient.side} ${patient.bone}`].join(' · ')}`}
            </p>
          )}
        </div>
      </div>
      <StagePath caseId={state.caseId} reached={stageOf(state)} open={open} day={dayOf(state.openedAt)} />
      <div className="head-right">
        <div className="head-state">
          {patient?.demonstration && <span>Demonstration</span>}
          <SavedWords saved={saved} />
          <SignedBy />
        </div>
        <ThemeSwitch />
        {action}
      </div>
    </header>
  );
}

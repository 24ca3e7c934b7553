/** The Admission stage: in short for the surgeon, the form for whoever takes the call, what others became, what was decided. */
import '../stages/stages.css';
import './admission.css';
import type { CaseState, RecordedEvent } from '@bonewright/casebook';
import { EntryForm } from '../form/entry-form.tsx';
import { NotesAndStory } from '../stages/notes-and-story.tsx';
import { PatientFacts } from '../stages/patient-facts.tsx';
import type { Append } from '../sync/new-event.ts';
import { AdmissionBrief } from './admission-brief.tsx';
import { ADMISSION_FIELDS, admissionOutcome, admissionValues } from './admission-fields.ts';
import { Decision } from './decision.tsx';
import { DevicePlace } from './device-place.tsx';
import { LawQuestions, Prognosis } from './prognosis.tsx';

interface AdmissionStageProps {
  readonly state: CaseState;
  readonly recorded: readonly RecordedEvent[];
  readonly append: Append;
}

export function AdmissionStage({ state, recorded, append }: AdmissionStageProps) {
  const patient = state.patient?.value;
  const before = admissionValues(state.admission.noted?.value ?? {});
  return (
    <div className="stage">
      <div className="stage-page">
        <div className="stage-column">
          <AdmissionBrief state={state} />
          <section aria-labelledby="admission-form-title">
            <h2 id="admission-form-title">Admission</h2>
            <p className="quiet">
              Three minutes on the phone. What nobody knows stays empty and can be said later; what is typed is kept on
              this device until it is recorded.
            </p>
            <EntryForm
              name="Admission"
              draftKey={`admission.${state.caseId}`}
              records="admission-noted"
              initial={before}
              fields={() => ADMISSION_FIELDS}
              word="Record the admission"
              outcome={(values) => admissionOutcome(values, before)}
              append={append}
              below={{
                key: 'longitude',
                node: (change) => <DevicePlace onPlace={(latitude, longitude) => change({ latitude, longitude })} />,
              }}
            />
          </section>
          <section aria-labelledby="patient-title">
            <h2 id="patient-title">The patient</h2>
            <PatientFacts state={state} append={append} />
          </section>
        </div>
        <div className="stage-column">
          <Decision state={state} append={append} />
          {patient && <Prognosis patient={patient} />}
          {patient && <LawQuestions patient={patient} />}
        </div>
      </div>
      <NotesAndStory stage="admission" {...{ state, recorded, append }} />
    </div>
  );
}

/** Who the patient is, and weighing it again. */
import { type CaseState, mayRecord } from '@bonewright/casebook';
import { useState } from 'react';
import { Field } from '../form/field.tsx';
import { readNumber } from '../form/read-number.ts';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { useDraft } from '../sync/use-draft.ts';
import { ageAndSex, capital, massWords } from '../words/patient.ts';
import { moment } from '../words/time.ts';

interface PatientFactsProps {
  readonly state: CaseState;
  readonly append: Append;
}

const readText = (kept: unknown): string => (typeof kept === 'string' ? kept : '');

export function PatientFacts({ state, append }: PatientFactsProps) {
  const signed = state.patient;
  const role = useRole();
  const draft = useDraft(`mass.${state.caseId}`, readText);
  const [why, setWhy] = useState<string | null>(null);
  if (!signed) return null;
  const patient = signed.value;
  const weigh = () => {
    const massG = readNumber(draft.value);
    if (massG === null || massG <= 0) {
      setWhy(`"${draft.value.trim()}" is no mass. Write grams in digits, like 310.`);
      return;
    }
    append([{ kind: 'patient-amended', payload: { massG, weighedAt: new Date().toISOString() } }]);
    draft.clear();
    setWhy(null);
  };
  const facts = [
    ['Species', capital(patient.species)],
    ['Name in the ward', patient.name || 'none given'],
    ['Age and sex', ageAndSex(patient.ageClass, patient.sex)],
    ['Broken bone', `${patient.side} ${patient.bone}`],
    [
      'Mass',
      patient.weighedAt ? `${massWords(patient.massG)}, ${moment(patient.weighedAt)}` : massWords(patient.massG),
    ],
    ['Case opened', `${moment(state.openedAt)}, ${signed.by}`],
  ] as const;
  return (
    <>
      <dl className="facts">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {mayRecord(role, 'patient-amended') && (
        <div className="weigh">
          <Field
            label="Weighed again, now"
            unit="g"
            inputMode="decimal"
            value={draft.value}
            onChange={draft.set}
            onEnter={weigh}
            why={why}
          />
          <button type="button" className="button" disabled={draft.value.trim() === ''} onClick={weigh}>
            Record the mass
          </button>
        </div>
      )}
    </>
  );
}

/** After release: who saw it again, and two outcomes that are never one: the bone's and the patient's. */
import type { CaseState } from '@bonewright/casebook';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import type { Append } from '../sync/new-event.ts';
import { fromField, moment, toField } from '../words/time.ts';

interface AfterwardsProps {
  readonly state: CaseState;
  readonly append: Append;
}

type SeenKey = 'at' | 'place' | 'words' | 'by';

const SEEN_FIELDS: readonly FieldSpec<SeenKey>[] = [
  { kind: 'time', key: 'at', label: 'Seen at' },
  { kind: 'text', key: 'place', label: 'Where' },
  { kind: 'text', key: 'words', label: 'What was seen', isWide: true },
  { kind: 'text', key: 'by', label: 'By whom' },
];

export function Afterwards({ state, append }: AfterwardsProps) {
  const { sightings, bone, patient } = state.course;
  return (
    <section aria-labelledby="after-title">
      <h2 id="after-title">Afterwards</h2>
      <h3>Seen again</h3>
      {sightings.length === 0 && <p className="quiet">Nobody has said so yet.</p>}
      {sightings.map(({ value, by, seq }) => (
        <p key={seq}>
          {`${moment(value.at)}${value.place ? `, ${value.place}` : ''}: ${value.words} (${value.by || by})`}
        </p>
      ))}
      <EntryForm
        name="Seen again"
        draftKey={`sighted.${state.caseId}`}
        records="sighted"
        initial={{ at: toField(new Date()), place: '', words: '', by: '' }}
        fields={() => SEEN_FIELDS}
        word="Record the sighting"
        outcome={sightedOutcome}
        append={append}
      />
      <h3>Two outcomes</h3>
      <p className="quiet">
        A healed bone is not a released patient: in one series of raptors 31 of 37 fractures healed and 20 of 34 birds
        were released (Bueno et al. 2015).
      </p>
      <p>{`The bone: ${bone ? said(bone.value.bone, bone.value.words, bone.by) : 'not said yet'}.`}</p>
      <p>{`The patient: ${patient ? said(patient.value.patient, patient.value.words, patient.by) : 'not said yet'}.`}</p>
      <EntryForm
        name="Outcome of the bone"
        draftKey={`bone-outcome.${state.caseId}`}
        records="bone-outcome"
        initial={{ bone: '', words: '' }}
        fields={() => BONE_FIELDS}
        word="Record it of the bone"
        outcome={boneOutcomeOf}
        append={append}
      />
      <EntryForm
        name="Outcome of the patient"
        draftKey={`patient-outcome.${state.caseId}`}
        records="patient-outcome"
        initial={{ patient: '', words: '' }}
        fields={() => PATIENT_FIELDS}
        word="Record it of the patient"
        outcome={patientOutcomeOf}
        append={append}
      />
    </section>
  );
}

const said = (word: string, words: string, by: string): string => `${word}${words ? `, ${words}` : ''} (${by})`;

function sightedOutcome({ at, place, words, by }: Values<SeenKey>): Outcome<SeenKey> {
  const seenAt = fromField(at);
  if (seenAt === null) return { faults: { at: 'Say when.' } };
  if (words.trim() === '') return { faults: { words: 'Say what was seen.' } };
  const payload = { at: seenAt, place: place.trim(), words: words.trim(), by: by.trim() };
  return { entries: [{ kind: 'sighted', payload }] };
}

const BONE = ['healed', 'healed crooked', 'not healed', 'unknown'] as const;
const PATIENT = ['released', 'died', 'put to sleep', 'kept', 'moved elsewhere', 'unknown'] as const;

const BONE_FIELDS: readonly FieldSpec<'bone' | 'words'>[] = [
  { kind: 'choice', key: 'bone', label: 'The bone', isWide: true, options: BONE.map((word) => [word, word] as const) },
  { kind: 'text', key: 'words', label: 'In words', isWide: true },
];
const PATIENT_FIELDS: readonly FieldSpec<'patient' | 'words'>[] = [
  { kind: 'choice', key: 'patient', label: 'The patient', isWide: true, options: PATIENT.map((w) => [w, w] as const) },
  { kind: 'text', key: 'words', label: 'In words', isWide: true },
];

function boneOutcomeOf({ bone, words }: Values<'bone' | 'words'>): Outcome<'bone' | 'words'> {
  const word = BONE.find((one) => one === bone);
  if (!word) return { faults: { bone: 'Choose one; unknown is an answer.' } };
  return { entries: [{ kind: 'bone-outcome', payload: { bone: word, words: words.trim() } }] };
}

function patientOutcomeOf({ patient, words }: Values<'patient' | 'words'>): Outcome<'patient' | 'words'> {
  const word = PATIENT.find((one) => one === patient);
  if (!word) return { faults: { patient: 'Choose one; unknown is an answer.' } };
  return { entries: [{ kind: 'patient-outcome', payload: { patient: word, words: words.trim() } }] };
}

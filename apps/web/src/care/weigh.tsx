/** A weight, by whoever cares for the patient; with the frame on it says so. */
import { type CaseState, isFrameOn } from '@bonewright/casebook';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import { numberFault, readNumber } from '../form/read-number.ts';
import type { Append } from '../sync/new-event.ts';
import { fromField, toField } from '../words/time.ts';

interface WeighProps {
  readonly state: CaseState;
  readonly append: Append;
}

type Key = 'mass' | 'at' | 'frame' | 'scale';

const FIELDS: readonly FieldSpec<Key>[] = [
  { kind: 'number', key: 'mass', label: 'Mass', unit: 'g' },
  { kind: 'time', key: 'at', label: 'Weighed at' },
  {
    kind: 'choice',
    key: 'frame',
    label: 'Frame',
    options: [
      ['off', 'none on'],
      ['on', 'weighed with it'],
    ],
  },
  { kind: 'text', key: 'scale', label: 'Which scale' },
];

export function Weigh({ state, append }: WeighProps) {
  const last = state.care.weights.at(-1)?.value.scale ?? state.admission.noted?.value.scale ?? '';
  return (
    <section aria-labelledby="weigh-title">
      <h2 id="weigh-title">Weigh</h2>
      <EntryForm
        name="Weigh"
        draftKey={`weigh.${state.caseId}`}
        records="weighed"
        initial={{ mass: '', at: toField(new Date()), frame: isFrameOn(state) ? 'on' : 'off', scale: last }}
        fields={() => FIELDS}
        word="Record the weight"
        outcome={weighOutcome}
        append={append}
      />
    </section>
  );
}

const HEAVIEST_G = 50_000;

function weighOutcome({ mass, at, frame, scale }: Values<Key>): Outcome<Key> {
  const massG = readNumber(mass);
  const when = fromField(at);
  if (massG === null || massG <= 0 || massG > HEAVIEST_G)
    return { faults: { mass: numberFault(mass) ?? 'Write grams in digits, like 310.' } };
  if (when === null) return { faults: { at: 'Say when.' } };
  const payload = { at: when, massG, withFrame: frame === 'on', scale: scale.trim() };
  return { entries: [{ kind: 'weighed', payload }] };
}

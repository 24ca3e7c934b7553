/** One entry of the controlled-drug register. */
import { drugOf, drugs } from '@bonewright/evidence';
import { REGISTER_KINDS, type RegisterPage, registerEntrySchema } from '@bonewright/ward';
import { useState } from 'react';
import { Field } from '../form/field.tsx';
import { readNumber } from '../form/read-number.ts';
import { randomId } from '../sync/random-id.ts';
import { practiceRecord } from '../sync/records.ts';
import { NOBODY_NAMED, useSigner } from '../sync/signer.ts';
import { fromField, moment, toField } from '../words/time.ts';
import { Choose } from './choose.tsx';
import { SignAs } from './sign-as.tsx';

const empty = () => ({
  kind: '',
  drug: '',
  perMl: '',
  form: '',
  at: toField(new Date()),
  ml: '',
  corrects: '',
  party: '',
  witness: '',
  note: '',
});
type Draft = ReturnType<typeof empty>;

export function RegisterForm({ pages }: { readonly pages: readonly RegisterPage[] }) {
  const [value, set] = useState(empty);
  const [refusal, refuse] = useState<string | null>(null);
  const by = useSigner();
  const change = (part: Partial<Draft>) => {
    refuse(null);
    set({ ...value, ...part });
  };
  const unit = drugOf(value.drug.trim().toLowerCase())?.unit ?? 'mg';
  const sign = () => {
    if (by === NOBODY_NAMED) return refuse('say at the top of the page who you are');
    const read = registerEntrySchema.safeParse(entryOf(value, unit));
    if (!read.success) {
      const { path = [], message = '' } = read.error.issues[0] ?? {};
      return refuse(`${path.join(' ')}: ${message}`);
    }
    practiceRecord().append([{ kind: 'controlled-drug-entered', payload: read.data }]);
    set(empty());
  };
  const entries = pages.flatMap(({ rows }) => rows.map(({ entry }) => entry));
  return (
    <form
      className="dose-form"
      onSubmit={(event) => {
        event.preventDefault();
        sign();
      }}
    >
      <h2>Make an entry</h2>
      <div className="dose-typed">
        <Choose label="What" value={value.kind} options={REGISTER_KINDS} onChange={(kind) => change({ kind })} />
        <Field label="When" type="datetime-local" value={value.at} onChange={(at) => change({ at })} />
        <Field
          label="Drug, by its generic name"
          value={value.drug}
          options={drugs.map(({ id }) => id)}
          onChange={(drug) => change({ drug })}
        />
        <Field
          label="Strength, as the vial has it"
          unit={`${unit}/ml`}
          inputMode="decimal"
          value={value.perMl}
          onChange={(perMl) => change({ perMl })}
        />
        <Field label="Form: vial, ampoule" value={value.form} onChange={(form) => change({ form })} />
        <Field
          label={value.kind === 'corrected' ? 'Adds (or, with a minus, takes away)' : 'Amount'}
          unit="ml"
          inputMode="decimal"
          value={value.ml}
          onChange={(ml) => change({ ml })}
        />
        {value.kind === 'corrected' && (
          <Choose
            label="Corrects the entry"
            value={value.corrects}
            options={entries.map(({ entryId }) => entryId)}
            words={Object.fromEntries(
              entries.map(({ entryId, at, kind, ml, drug }) => [entryId, `${moment(at)}, ${drug} ${kind} ${ml} ml`]),
            )}
            onChange={(corrects) => change({ corrects })}
          />
        )}
        <Field label="From whom, or to which patient" value={value.party} onChange={(party) => change({ party })} />
        <Field label="Witness" value={value.witness} onChange={(witness) => change({ witness })} />
        <Field
          label="Note: batch, why no witness, what was wrong"
          value={value.note}
          onChange={(note) => change({ note })}
        />
        <SignAs verb="Enter" by={by} refusal={refusal} />
      </div>
    </form>
  );
}

function entryOf(value: Draft, unit: 'mg' | 'U') {
  return {
    entryId: randomId(),
    kind: value.kind,
    drug: value.drug.trim().toLowerCase(),
    perMl: readNumber(value.perMl),
    unit,
    form: value.form.trim(),
    at: fromField(value.at),
    ml: readNumber(value.ml),
    corrects: value.kind === 'corrected' && value.corrects ? value.corrects : null,
    party: value.party.trim(),
    caseId: null,
    witness: value.witness.trim() || null,
    note: value.note.trim(),
  };
}

/** The practice's formulary: ranges its vets chose beside what is published, each signed. Never a dose for a patient. */
import type { Signed } from '@bonewright/casebook';
import { DOSE_ROUTES, DOSE_USES, drugOf, drugs } from '@bonewright/evidence';
import { faultLine, InputError } from '@bonewright/fault';
import {
  checkChoice,
  choiceRemarks,
  type FormularyChoice,
  formularyChoiceSchema,
  publishedFor,
  rangeWords,
  speciesName,
} from '@bonewright/ward';
import { useState } from 'react';
import { SPECIES } from '../admission/choices.ts';
import { Field } from '../form/field.tsx';
import { readNumber } from '../form/read-number.ts';
import { ReasonDialog } from '../form/reason-dialog.tsx';
import { randomId } from '../sync/random-id.ts';
import { practiceRecord } from '../sync/records.ts';
import { NOBODY_NAMED, useSigner } from '../sync/signer.ts';
import { usePractice } from '../sync/use-case.ts';
import { moment } from '../words/time.ts';
import { useCanSignDoses } from './can-sign-doses.ts';
import { Choose } from './choose.tsx';
import { PracticePage } from './practice-page.tsx';
import { PublishedFigures } from './published-figures.tsx';
import { SignAs } from './sign-as.tsx';

export function FormularyPage() {
  const { formulary } = usePractice().state.medicines;
  const canSign = useCanSignDoses();
  return (
    <PracticePage title="Formulary">
      <p className="lead">Ranges that a vet of this practice chose and signed. They stand beside the published ones.</p>
      {formulary.length === 0 ? (
        <p className="quiet">Nothing is chosen yet.</p>
      ) : (
        <ul className="dose-cards" aria-label="Formulary">
          {formulary.map((choice) => (
            <ChoiceItem key={choice.value.choiceId} choice={choice} canSign={canSign} />
          ))}
        </ul>
      )}
      {canSign && <ChoiceForm />}
    </PracticePage>
  );
}

function ChoiceItem({
  choice: { value, by, at },
  canSign,
}: {
  readonly choice: Signed<FormularyChoice>;
  readonly canSign: boolean;
}) {
  const [asks, ask] = useState(false);
  const { choiceId, drug, species, route, use, unit, everyHours, reason } = value;
  return (
    <li className="dose-card">
      <div>
        <h2>
          {drug}, {species} <span className="quiet">{route}</span>
        </h2>
        <p>
          <b>
            {rangeWords(value)} {unit}/kg
          </b>
          , {use}
          {everyHours !== null && `, every ${everyHours} h`}
        </p>
        <p className="caption">
          Signed by {by}, {moment(at)}.{reason && ` Because: ${reason}.`}
        </p>
      </div>
      {canSign && (
        <button type="button" className="button" onClick={() => ask(true)}>
          Withdraw<span className="sr-only"> {drug}</span>
        </button>
      )}
      {asks && (
        <ReasonDialog
          title={`Withdraw ${drug} for a ${species}`}
          common={['newer evidence', 'not used here']}
          actions={[
            {
              word: 'Withdraw it',
              act: (because) =>
                practiceRecord().append([{ kind: 'formulary-withdrawn', payload: { choiceId, because } }]),
            },
          ]}
          onClose={() => ask(false)}
        />
      )}
    </li>
  );
}

const EMPTY = { drug: '', species: '', route: '', use: '', low: '', high: '', every: '', reason: '' };

function ChoiceForm() {
  const [value, set] = useState(EMPTY);
  const [refusal, refuse] = useState<string | null>(null);
  const by = useSigner();
  const change = (part: Partial<typeof EMPTY>) => {
    refuse(null);
    set({ ...value, ...part });
  };
  const drug = value.drug.trim().toLowerCase();
  const species = speciesName(value.species);
  const unit = drugOf(drug)?.unit ?? 'mg';
  const read = choiceOf(value, drug, species, unit);
  const sign = () => {
    try {
      if (by === NOBODY_NAMED) throw new InputError('nobody signs', '', 'say at the top of the page who you are');
      if (!read)
        throw new InputError('the range is not complete', '', 'fill in drug, species, route, use and both ends');
      checkChoice(read);
      practiceRecord().append([{ kind: 'formulary-chosen', payload: { ...read, figureIds: [...read.figureIds] } }]);
      set(EMPTY);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      refuse(faultLine(error));
    }
  };
  return (
    <form
      className="dose-form"
      onSubmit={(event) => {
        event.preventDefault();
        sign();
      }}
    >
      <h2>Choose a range</h2>
      <div className="dose-two">
        <section aria-label="The range" className="dose-typed">
          <Field
            label="Drug, by its generic name"
            value={value.drug}
            options={drugs.map(({ id }) => id)}
            onChange={(text) => change({ drug: text })}
          />
          <Field
            label="Species"
            value={value.species}
            options={SPECIES}
            onChange={(text) => change({ species: text })}
          />
          <Choose label="Route" value={value.route} options={DOSE_ROUTES} onChange={(route) => change({ route })} />
          <Choose label="For" value={value.use} options={DOSE_USES} onChange={(use) => change({ use })} />
          <Field
            label="From"
            unit={`${unit}/kg`}
            inputMode="decimal"
            value={value.low}
            onChange={(low) => change({ low })}
          />
          <Field
            label="To"
            unit={`${unit}/kg`}
            inputMode="decimal"
            value={value.high}
            onChange={(high) => change({ high })}
          />
          <Field
            label="Again after, where it is repeated"
            unit="h"
            inputMode="decimal"
            value={value.every}
            onChange={(every) => change({ every })}
          />
          <Field
            label="Why, where something stands against it"
            value={value.reason}
            onChange={(reason) => change({ reason })}
          />
          <SignAs verb="Sign" by={by} refusal={refusal} />
        </section>
        <section aria-label="What is published" className="dose-result">
          {read && choiceRemarks(read).map(({ code, words }) => <p key={code}>{words}</p>)}
          {drug !== '' && species !== '' && (
            <PublishedFigures
              shown={publishedFor(drug, species)}
              unit={unit}
              taken=""
              onTake={({ low, high, use }) => change({ low: String(low), high: String(high), use: value.use || use })}
            />
          )}
        </section>
      </div>
    </form>
  );
}

function choiceOf(value: typeof EMPTY, drug: string, species: string, unit: 'mg' | 'U'): FormularyChoice | null {
  const read = formularyChoiceSchema.safeParse({
    choiceId: randomId(),
    drug,
    species,
    route: value.route,
    use: value.use,
    low: readNumber(value.low),
    high: readNumber(value.high),
    unit,
    everyHours: readNumber(value.every),
    figureIds: publishedFor(drug, species).map(({ figure }) => figure.id),
    reason: value.reason.trim(),
  });
  return read.success ? read.data : null;
}

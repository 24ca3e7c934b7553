/** Writing a dose: drug, use and route; the published figures; what the vet types; what it comes to; the signature. */
import { type CaseState, earlierDoses } from '@bonewright/casebook';
import { DOSE_ROUTES, DOSE_USES, type DoseFigure, drugOf, drugs, syringes } from '@bonewright/evidence';
import { faultLine, InputError } from '@bonewright/fault';
import {
  chosenFor,
  DOSE_UNITS,
  type DoseContext,
  type Judged,
  judgeDose,
  publishedFor,
  rangeWords,
  STRENGTH_UNITS,
  signDose,
} from '@bonewright/ward';
import { useState } from 'react';
import { Field } from '../form/field.tsx';
import { numberFault } from '../form/read-number.ts';
import type { Append } from '../sync/new-event.ts';
import { randomId } from '../sync/random-id.ts';
import { NOBODY_NAMED, useSigner } from '../sync/signer.ts';
import { usePractice } from '../sync/use-case.ts';
import { useDraft } from '../sync/use-draft.ts';
import { Choose } from './choose.tsx';
import { type DoseDraft, lineOf, readDoseDraft } from './dose-draft.ts';
import { PublishedFigures } from './published-figures.tsx';
import { WorkedDose } from './worked-dose.tsx';

interface DoseFormProps {
  readonly state: CaseState;
  readonly append: Append;
}

export function DoseForm({ state, append }: DoseFormProps) {
  const draft = useDraft(`dose.${state.caseId}`, readDoseDraft);
  const by = useSigner();
  const [refusal, refuse] = useState<string | null>(null);
  const { value } = draft;
  const change = (part: Partial<DoseDraft>) => {
    refuse(null);
    draft.set({ ...value, ...part });
  };
  const patient = state.patient?.value;
  if (!patient) return null;
  const { line, lacks } = lineOf(value, patient);
  const context = contextOf(state);
  const judged = line ? judgedOrWhy(line, context) : null;
  const sign = () => {
    if (!line) return;
    try {
      if (by === NOBODY_NAMED) throw new InputError('nobody signs', '', 'say at the top of the page who you are');
      const secondPerson = value.secondPerson || null;
      const signature = signDose(line, contextOf(state), { by, reasons: value.reasons, secondPerson });
      append([{ kind: 'dose-signed', payload: { doseId: randomId(), signature } }]);
      draft.clear();
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      refuse([error.what, error.hint].filter(Boolean).join('; '));
    }
  };
  const needsSecond = isJudged(judged) && judged.remarks.some(({ needs }) => needs === 'second person');
  return (
    <form
      className="dose-form"
      aria-labelledby="dose-form-title"
      onSubmit={(event) => {
        event.preventDefault();
        sign();
      }}
    >
      <h3 id="dose-form-title">Write a dose</h3>
      <div className="dose-two">
        <Typed {...{ value, change }} species={patient.species} />
        <section aria-label="What it comes to" className="dose-result">
          {lacks !== null && <p className="quiet">{lacks}</p>}
          {typeof judged === 'string' && <p className="quiet">{judged}</p>}
          {isJudged(judged) && (
            <>
              <WorkedDose
                judged={judged}
                reasons={value.reasons}
                onReason={(code, reason) => change({ reasons: { ...value.reasons, [code]: reason } })}
              />
              {needsSecond && (
                <Field
                  label="Second person, who looked at it too"
                  value={value.secondPerson}
                  onChange={(secondPerson) => change({ secondPerson })}
                />
              )}
              <button type="submit" className="button button-main">
                Sign as {by === NOBODY_NAMED ? '(say who you are)' : by}
              </button>
            </>
          )}
          {refusal && (
            <p className="field-why" role="alert">
              Not signed: {refusal}
            </p>
          )}
        </section>
      </div>
    </form>
  );
}

const isJudged = (judged: Judged | string | null): judged is Judged => typeof judged === 'object' && judged !== null;

function judgedOrWhy(line: Judged['line'], context: DoseContext): Judged | string {
  try {
    return judgeDose(line, context);
  } catch (error) {
    if (error instanceof InputError) return faultLine(error);
    throw error;
  }
}

const contextOf = ({ doses }: CaseState): DoseContext => {
  const now = new Date();
  return { now: now.toISOString(), minutesEastOfUtc: -now.getTimezoneOffset(), earlier: earlierDoses(doses) };
};

interface TypedProps {
  readonly value: DoseDraft;
  readonly change: (part: Partial<DoseDraft>) => void;
  readonly species: string;
}

/** The fields, and the figures beside which the dose is typed. */
function Typed({ value, change, species }: TypedProps) {
  const drug = value.drug.trim().toLowerCase();
  const known = drugOf(drug);
  const unit = known?.unit ?? 'mg';
  const units = { doseUnit: `${unit}/kg`, strengthUnit: `${unit}/ml` };
  const strengths = known?.strengths.map(({ perMl, status }) => `${perMl}${status === 'seen' ? '' : ' (from memory)'}`);
  const take = (figure: DoseFigure) =>
    change({
      figureId: figure.id,
      dose: figure.low === figure.high ? String(figure.low) : '',
      doseUnit: `${unit}/kg`,
      use: value.use || figure.use,
      route: value.route || (figure.routes.length === 1 ? (figure.routes[0] ?? '') : ''),
    });
  return (
    <section aria-label="The dose" className="dose-typed">
      <Field
        label="Drug, by its generic name"
        value={value.drug}
        options={drugs.map(({ id }) => id)}
        onChange={(text) => {
          const isU = drugOf(text.trim().toLowerCase())?.unit === 'U';
          const fresh = isU ? { doseUnit: 'U/kg', strengthUnit: 'U/ml' } : units.doseUnit === 'U/kg' ? MG : {};
          change({ drug: text, figureId: '', reasons: {}, ...fresh });
        }}
      />
      <Choose label="For" value={value.use} options={DOSE_USES} onChange={(use) => change({ use })} />
      <Choose label="Route" value={value.route} options={DOSE_ROUTES} onChange={(route) => change({ route })} />
      <Field label="Site, where it matters" value={value.site} onChange={(site) => change({ site })} />
      {drug !== '' && (
        <div className="dose-wide">
          <h4>Published, for you to take or leave</h4>
          <PracticeChoice {...{ drug, species }} route={value.route} />
          <PublishedFigures shown={publishedFor(drug, species)} unit={unit} taken={value.figureId} onTake={take} />
        </div>
      )}
      <Field
        label="Dose"
        inputMode="decimal"
        value={value.dose}
        why={numberFault(value.dose)}
        onChange={(dose) => change({ dose })}
      />
      <Choose
        label="Dose in"
        value={value.doseUnit}
        options={DOSE_UNITS}
        onChange={(doseUnit) => change({ doseUnit })}
      />
      <Field
        label="Strength, as the vial has it"
        inputMode="decimal"
        value={value.strength}
        why={numberFault(value.strength)}
        help={
          strengths && strengths.length > 0
            ? `Known: ${strengths.join(', ')} ${unit}/ml. Always read the vial.`
            : 'Always read the vial.'
        }
        onChange={(strength) => change({ strength })}
      />
      <Choose
        label="Strength in"
        value={value.strengthUnit}
        options={STRENGTH_UNITS}
        onChange={(strengthUnit) => change({ strengthUnit })}
      />
      <Field
        label="Diluted: one part in how many"
        inputMode="numeric"
        value={value.parts}
        help="Empty: drawn as it comes. 10 means 1 part of drug and 9 of diluent."
        onChange={(parts) => change({ parts })}
      />
      <Field label="Diluted with" value={value.diluent} onChange={(diluent) => change({ diluent })} />
      <Choose
        label="Syringe"
        value={value.syringe}
        options={syringes.map(({ id }) => id)}
        words={Object.fromEntries(syringes.map(({ id, name, markMl }) => [id, `${name}, marks of ${markMl} ml`]))}
        onChange={(syringe) => change({ syringe })}
      />
    </section>
  );
}

const MG = { doseUnit: 'mg/kg', strengthUnit: 'mg/ml' };

function PracticeChoice({
  drug,
  species,
  route,
}: {
  readonly drug: string;
  readonly species: string;
  readonly route: string;
}) {
  const { formulary } = usePractice().state.medicines;
  const wanted = DOSE_ROUTES.find((each) => each === route);
  const choice =
    wanted &&
    chosenFor(
      formulary.map(({ value }) => value),
      { drug, species, route: wanted },
    );
  if (!choice) return null;
  const by = formulary.find(({ value }) => value === choice)?.by;
  return (
    <p>
      <b>
        Your practice: {rangeWords(choice)} {choice.unit}/kg
      </b>
      {choice.everyHours && `, every ${choice.everyHours} h`}, signed by {by}.
    </p>
  );
}

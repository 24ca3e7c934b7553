/** One dose of the case: what to draw up, who signed it, given or not. */
import type { DoseInCase } from '@bonewright/casebook';
import { drugOf } from '@bonewright/evidence';
import { plain, type SignedDose, spelled, unitWords } from '@bonewright/ward';
import { useState } from 'react';
import { Link } from 'wouter';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { ReasonDialog } from '../form/reason-dialog.tsx';
import type { Append } from '../sync/new-event.ts';
import { moment } from '../words/time.ts';
import { useCanGiveDoses, useCanSignDoses } from './can-sign-doses.ts';

interface DoseCardProps {
  readonly dose: DoseInCase;
  readonly append: Append;
}

export function DoseCard({ dose, append }: DoseCardProps) {
  const { doseId, line, signed, given, voided } = dose;
  const [asks, ask] = useState(false);
  const canSign = useCanSignDoses();
  const canGive = useCanGiveDoses();
  const give = () => append([{ kind: 'dose-given', payload: { doseId, at: new Date().toISOString(), note: '' } }]);
  return (
    <li className="dose-card">
      <div>
        <h3>
          {line.drug} <span className="quiet">{[line.route, line.site].filter(Boolean).join(', ')}</span>
        </h3>
        {signed ? <Drawn signature={signed.value} /> : <NotSigned />}
        {signed && (
          <p className="caption">
            Signed by {signed.by}, {moment(signed.at)}
            {signed.value.secondPerson && `; seen by ${signed.value.secondPerson} as well`}.
          </p>
        )}
        {voided && (
          <p className="caption">
            Voided by {voided.by}, {moment(voided.at)}: {voided.value}.
          </p>
        )}
      </div>
      <div className="dose-card-acts">
        {given && (
          <p className="verdict verdict-good">
            <VerdictMark verdict="good" />
            given {moment(given.value.at)}, {given.by}
          </p>
        )}
        {given && !voided && (drugOf(line.drug)?.schedules?.length ?? 0) > 0 && (
          <Link href="/register">Controlled? Enter it in the register</Link>
        )}
        {signed && !given && !voided && canGive && (
          <button type="button" className="button button-main" onClick={give}>
            Given now<span className="sr-only">: {line.drug}</span>
          </button>
        )}
        {!voided && canSign && (
          <button type="button" className="button" onClick={() => ask(true)}>
            Void<span className="sr-only"> {line.drug}</span>
          </button>
        )}
      </div>
      {asks && (
        <ReasonDialog
          title={`Void the dose of ${line.drug}`}
          common={['not wanted', 'mass has changed', 'wrong vial']}
          actions={[
            { word: 'Void it', act: (because) => append([{ kind: 'dose-voided', payload: { doseId, because } }]) },
          ]}
          onClose={() => ask(false)}
        />
      )}
    </li>
  );
}

function NotSigned() {
  return (
    <p className="verdict verdict-stop">
      <VerdictMark verdict="stop" />
      not signed
    </p>
  );
}

function Drawn({ signature }: { readonly signature: SignedDose }) {
  const { line, drawnMl, amount, unit, recipe } = signature;
  return (
    <>
      <p className="dose-volume">
        {plain(drawnMl)} <span>ml</span>
      </p>
      <p className="caption">
        {spelled(plain(drawnMl))} millilitres. {plain(line.dose.value)} {unitWords(line.dose.unit)} for{' '}
        {plain(line.massG)} g = {plain(amount)} {unit}, from {plain(line.strength.value)}{' '}
        {unitWords(line.strength.unit)}.{' '}
        {recipe && line.dilution
          ? `Mix first: ${plain(recipe.drugMl)} ml of drug + ${plain(recipe.diluentMl)} ml of ${line.dilution.diluent}.`
          : 'Undiluted.'}
      </p>
    </>
  );
}

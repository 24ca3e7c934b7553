/** What published ratios make of the alpha-2 agonist that was given: arithmetic for the vet, who signs it like any dose. */
import { type CaseState, type DoseInCase, earlierDoses } from '@bonewright/casebook';
import { doEqualVolumesReverse, plain, reversalsOf } from '@bonewright/ward';

/** The strength of atipamezole for which the trick was published. */
const USUAL = { perMl: 5, isDiluted: false };

export function ReversalWords({ state }: { readonly state: CaseState }) {
  const massG = state.patient?.value.massG ?? null;
  const given = earlierDoses(state.doses).filter(({ givenAt }) => givenAt !== null);
  const reversals = massG === null ? [] : reversalsOf(given, massG);
  if (reversals.length === 0) return null;
  return (
    <ul className="dose-reversals" aria-label="Reversal by published ratios">
      {reversals.map(({ of, antagonist, ratio, amountMg, perKg }) => (
        <li key={of.doseId}>
          {plain(of.amount)} mg of {of.drug} given: {ratio.value} times is {plain(amountMg)} mg of {antagonist} (
          {plain(perKg)} mg/kg; {ratio.appliesTo}; {ratio.source.title}).{' '}
          {trick(state.doses.find(({ doseId }) => doseId === of.doseId))}
        </li>
      ))}
    </ul>
  );
}

function trick(dose: DoseInCase | undefined): string {
  const drug = dose?.line.drug;
  if (!dose?.signed || (drug !== 'medetomidine' && drug !== 'dexmedetomidine')) return '';
  const drawn = { perMl: dose.signed.value.perMl, isDiluted: dose.line.dilution !== null };
  return doEqualVolumesReverse(drug, drawn, USUAL)
    ? 'Equal volumes hold only for undiluted atipamezole of 5 mg/ml.'
    : 'Equal volumes do not hold here: another strength, or diluted.';
}

/** What the month says: young that may wait for it. */
import type { CaseState } from '@bonewright/casebook';
import { breedingIn, speciesName } from '@bonewright/ward';

export function Season({ state }: { readonly state: CaseState }) {
  const patient = state.patient?.value;
  if (!patient) return null;
  const breeding = breedingIn(speciesName(patient.species), new Date().getMonth() + 1);
  const inMilk = state.admission.noted?.value.inMilk;
  return (
    <section aria-labelledby="season-title">
      <h2 id="season-title">Season</h2>
      {breeding ? (
        <p>{`In this month there may be young. ${breeding.says} (${breeding.source})`}</p>
      ) : (
        <p>{`No season of young is known here for this month and species (${patient.species}): ask somebody who knows.`}</p>
      )}
      <p>
        {inMilk === undefined
          ? 'At admission nobody said whether it had milk or young.'
          : `At admission: milk or young that wait: ${inMilk}.`}
      </p>
    </section>
  );
}

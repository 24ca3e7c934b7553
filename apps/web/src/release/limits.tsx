/** Where sources disagree: both limits as published, and the one that this practice goes by for this patient, signed. */
import { type CaseState, chosenLimit, mayRecord } from '@bonewright/casebook';
import { releaseLimits } from '@bonewright/ward';
import { Choice } from '../form/choice.tsx';
import { EvidenceLines } from '../plan/margins/evidence-lines.tsx';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { moment } from '../words/time.ts';

interface LimitsProps {
  readonly state: CaseState;
  readonly append: Append;
}

const UNITS: Readonly<Record<string, string>> = { g: 'g', degC: '°C' };

export function Limits({ state, append }: LimitsProps) {
  const isOwnToChoose = mayRecord(useRole(), 'limit-chosen');
  const species = state.patient?.value.species ?? '';
  const limits = releaseLimits(species);
  return (
    <section aria-labelledby="limits-title">
      <h2 id="limits-title">What sources ask for</h2>
      {limits.length === 0 && (
        <p>{`No published limit of mass or night temperature was found for this species (${species}). Whoever looks decides.`}</p>
      )}
      {limits.map(({ subject, asks, sources }) => {
        const chosen = state.course.limits.find(({ value }) => value.subject === subject);
        return (
          <div key={subject} className="limit">
            <EvidenceLines ids={sources.map(({ id }) => id)} />
            {isOwnToChoose ? (
              <Choice
                label={asks}
                options={sources.map(({ id, value, unit }) => [
                  id,
                  `${subject === 'night' ? 'above ' : 'at least '}${value} ${UNITS[unit] ?? unit}`,
                ])}
                value={chosenLimit(state, subject)}
                onChange={(evidenceId) => append([{ kind: 'limit-chosen', payload: { subject, evidenceId } }])}
              />
            ) : (
              <p>{chosen ? `Chosen: ${chosen.value.evidenceId}` : 'Not chosen yet.'}</p>
            )}
            <p className="caption">
              {chosen
                ? `Chosen and signed by ${chosen.by}, ${moment(chosen.at)}.`
                : 'Sources disagree; none is chosen.'}
            </p>
          </div>
        );
      })}
    </section>
  );
}

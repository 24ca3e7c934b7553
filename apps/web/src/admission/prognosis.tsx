/** Published series laid beside the case, nearest first, and the questions of law. What happened to others; no verdict on this one. */
import type { Patient } from '@bonewright/casebook';
import { animalsOf, lawBeside, seriesBeside, speciesName } from '@bonewright/ward';
import { capital } from '../words/patient.ts';

const KNOWN = {
  seen: 'seen',
  memory: 'unverified, from memory',
  computed: 'computed',
  'common practice': 'common practice, no source',
};

export function Prognosis({ patient }: { readonly patient: Patient }) {
  const species = speciesName(patient.species);
  const beside = seriesBeside({ species, group: animalsOf(species), bone: patient.bone.toLowerCase() });
  const isOwn = beside.some(({ nearness }) => nearness === 'same species and bone');
  return (
    <section aria-labelledby="prognosis-title" className="prognosis">
      <h2 id="prognosis-title">What became of others</h2>
      {!isOwn && (
        <p>
          No published series of a {patient.bone} in a {species} was found. What follows is of other animals or other
          injuries.
        </p>
      )}
      <ul>
        {beside.map(({ series, nearness }) => (
          <li key={series.id}>
            <p className="prognosis-head">
              <strong>{capital(series.animals)}</strong>
              <span>{series.n === null ? 'n not said' : `n = ${series.n}`}</span>
            </p>
            <p className="caption">{`${capital(nearness)}. ${capital(series.treatment)}.`}</p>
            {series.outcomes.map((words) => (
              <p key={words}>{capital(words)}.</p>
            ))}
            {series.note && <p>{capital(series.note)}.</p>}
            <p className="caption">
              {[series.source.title, series.source.year].filter(Boolean).join(', ')} ({KNOWN[series.status]})
            </p>
          </li>
        ))}
      </ul>
      <p className="quiet">These are no forecast for this patient: age, other injuries and care differ.</p>
    </section>
  );
}

export function LawQuestions({ patient }: { readonly patient: Patient }) {
  const species = speciesName(patient.species);
  return (
    <section aria-labelledby="law-title" className="law">
      <h2 id="law-title">Law: questions to ask</h2>
      <p className="quiet">No answers here. Local law and whoever is responsible decide.</p>
      <ul>
        {lawBeside({ species, group: animalsOf(species), bone: patient.bone }).map((q) => (
          <li key={q.id}>
            <p>{q.question}</p>
            <p className="caption">{`${q.country}. Ask: ${q.ask}.`}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}

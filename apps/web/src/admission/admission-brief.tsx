/** What a surgeon has to know, in twenty seconds: what worries first, then the rest, what nobody said last. */
import { type Admission, type CaseState, latestMass } from '@bonewright/casebook';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { ageAndSex, capital, massWords } from '../words/patient.ts';
import { moment } from '../words/time.ts';

export function AdmissionBrief({ state }: { readonly state: CaseState }) {
  const patient = state.patient?.value;
  if (!patient) return null;
  const noted = state.admission.noted?.value ?? {};
  const mass = latestMass(state);
  const worries = worriesOf(noted);
  const silent = NOT_SAID.filter(({ key }) => noted[key] === undefined).map(({ word }) => word);
  const who = `${capital(patient.species)}, ${ageAndSex(patient.ageClass, patient.sex)}, ${massWords(mass?.massG ?? null)}`;
  return (
    <section aria-labelledby="brief-title" className="brief">
      <h2 id="brief-title">In short</h2>
      <p className="lead">
        {`${who}${mass?.at ? ` (${moment(mass.at)})` : ''}. ${capital(patient.side)} ${patient.bone} broken`}
        {noted.cause ? `, ${noted.cause}` : ''}
        {noted.foundAt ? `, found ${moment(noted.foundAt)}` : ''}.
      </p>
      {worries.map((words) => (
        <p key={words} className="brief-worry">
          <VerdictMark verdict="watch" />
          {words}
        </p>
      ))}
      <dl className="facts">
        {factsOf(noted).map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      {silent.length > 0 && <p className="quiet">Nobody said yet: {silent.join(', ')}.</p>}
      {state.admission.noted && (
        <p className="caption">
          Last noted by {state.admission.noted.by}, {moment(state.admission.noted.at)}.
        </p>
      )}
    </section>
  );
}

function worriesOf(noted: Partial<Admission>): string[] {
  return [
    noted.wound === 'open' && 'Open: the skin over the break is broken.',
    noted.boneShows === 'dried out' && 'Bone shows and is dried out: such a limb is usually lost.',
    noted.boneShows === 'moist' && 'Bone shows, still moist: keep it moist.',
    noted.feels === 'no' && 'No feeling below the break.',
    noted.bloodReaches === 'no' && 'Not warm and pink below the break.',
    noted.inMilk === 'yes' && 'In milk, or young wait for it: they need an answer today.',
  ].filter((words) => words !== false);
}

function factsOf(noted: Partial<Admission>): (readonly [string, string])[] {
  const { place, finder, rescue } = noted;
  const pairs: (readonly [string, string | undefined])[] = [
    ['Other injuries', noted.otherInjuries],
    ['Given before', noted.givenBefore],
    ['Found', [place?.words, place?.mapReference].filter(Boolean).join(', ')],
    ['Finder', [finder?.name, finder?.contact].filter(Boolean).join(', ')],
    ['Rescue', [rescue?.name, rescue?.contact].filter(Boolean).join(', ')],
    ['Who decides', [noted.decides, noted.consent && `consent ${noted.consent}`].filter(Boolean).join(', ')],
  ];
  return pairs.flatMap(([name, words]) => (words ? [[name, words] as const] : []));
}

const NOT_SAID: readonly { readonly key: keyof Admission; readonly word: string }[] = [
  { key: 'place', word: 'where it was found' },
  { key: 'wound', word: 'open or closed' },
  { key: 'feels', word: 'feeling below the break' },
  { key: 'bloodReaches', word: 'blood below the break' },
  { key: 'inMilk', word: 'milk or young' },
  { key: 'givenBefore', word: 'what it was given' },
  { key: 'decides', word: 'who decides' },
];

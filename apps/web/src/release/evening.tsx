/** When it gets dark where it was found, tonight and in the nights to come; the forecast as somebody typed it. */
import type { CaseState } from '@bonewright/casebook';
import { type Place, sunTimes } from '@bonewright/ward';
import { EntryForm, type FieldSpec, type Outcome, type Values } from '../form/entry-form.tsx';
import { readNumber } from '../form/read-number.ts';
import type { Append } from '../sync/new-event.ts';
import { comingNights, dayWords, hourOf, today } from '../words/time.ts';

interface EveningProps {
  readonly state: CaseState;
  readonly append: Append;
}

const NIGHTS = 7;

export function Evening({ state, append }: EveningProps) {
  const place = foundPlace(state);
  const { forecast } = state.course;
  return (
    <section aria-labelledby="evening-title">
      <h2 id="evening-title">Dusk where it was found</h2>
      {place ? (
        <Nights place={place} />
      ) : (
        <p>
          No degrees of the place are in the record, so dusk is not worked out. They can be given at Admission, where it
          was found.
        </p>
      )}
      <h3>Forecast</h3>
      <p className="quiet">Nothing is looked up here: read it where you trust it, and say where that was.</p>
      {forecast && (
        <p className="decision-stands">
          {`Night of ${dayWords(forecast.value.night)}: lowest ${forecast.value.lowestC} °C${forecast.value.words ? `, ${forecast.value.words}` : ''}. ${forecast.value.source ? `From ${forecast.value.source}; ` : ''}${forecast.by}.`}
        </p>
      )}
      <EntryForm
        name="Forecast"
        draftKey={`forecast.${state.caseId}`}
        records="forecast-noted"
        initial={{ night: today(), lowest: '', words: '', source: '' }}
        fields={() => FIELDS}
        word="Record the forecast"
        outcome={forecastOutcome}
        append={append}
      />
    </section>
  );
}

export function foundPlace(state: CaseState): Place | null {
  const { latitudeDeg = null, longitudeDeg = null } = state.admission.noted?.value.place ?? {};
  return latitudeDeg === null || longitudeDeg === null ? null : { latitudeDeg, longitudeDeg };
}

const SUN = { 'stays up': 'the sun does not set', 'stays down': 'the sun does not rise', sets: '' };

function Nights({ place }: { readonly place: Place }) {
  return (
    <table className="later-table nights">
      <caption className="caption">
        Computed from date and place, in the time of this device. Hills and cloud make it dark earlier.
      </caption>
      <thead>
        <tr>
          <th scope="col">night of</th>
          <th scope="col">sunset</th>
          <th scope="col">dark enough (dusk)</th>
          <th scope="col">sunrise after</th>
        </tr>
      </thead>
      <tbody>
        {comingNights(NIGHTS).map((night, i) => {
          const { sun, sunset, dusk, nextSunrise } = sunTimes(place, night);
          return (
            <tr key={night}>
              <th scope="row">{i === 0 ? 'tonight' : dayWords(night)}</th>
              <td>{sunset ? hourOf(sunset) : SUN[sun]}</td>
              <td>
                <strong>{dusk ? hourOf(dusk) : 'it does not get dark'}</strong>
              </td>
              <td>{nextSunrise ? hourOf(nextSunrise) : 'none within a day'}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

type Key = 'night' | 'lowest' | 'words' | 'source';

const FIELDS: readonly FieldSpec<Key>[] = [
  { kind: 'day', key: 'night', label: 'Night of' },
  { kind: 'number', key: 'lowest', label: 'Lowest', unit: '°C' },
  { kind: 'text', key: 'words', label: 'Rain, wind, snow, the nights after' },
  { kind: 'text', key: 'source', label: 'Read where' },
];

function forecastOutcome({ night, lowest, words, source }: Values<Key>): Outcome<Key> {
  const lowestC = readNumber(lowest);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(night)) return { faults: { night: 'Say for which night.' } };
  if (lowestC === null || Math.abs(lowestC) > 60) return { faults: { lowest: 'Degrees in digits, like -2 or 6.' } };
  const payload = { night, lowestC, words: words.trim(), source: source.trim() };
  return { entries: [{ kind: 'forecast-noted', payload }] };
}

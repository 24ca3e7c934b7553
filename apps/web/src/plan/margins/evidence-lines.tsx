/** The evidence behind a figure: value, range, source, and whether anybody read it there. */
import { type Entry, entry, type Status } from '@bonewright/evidence';
import { capital } from '../../words/patient.ts';
import { threeFigures } from '../words.ts';

const KNOWN: Readonly<Record<Status, string>> = {
  seen: 'seen in the source',
  memory: 'from memory, nobody has looked it up',
  computed: 'computed here',
  'common practice': 'common practice, no source',
};

export function EvidenceLines({ ids }: { readonly ids: readonly string[] }) {
  if (ids.length === 0) return null;
  return (
    <ul className="evidence">
      {ids.map((id) => (
        <li key={id}>
          <EvidenceLine of={entry(id)} />
        </li>
      ))}
    </ul>
  );
}

function EvidenceLine({ of }: { readonly of: Entry }) {
  const { name, source, status, conflicts, appliesTo } = of;
  const place = [source.title, source.place, source.year].filter(Boolean).join(', ');
  return (
    <>
      <span className="evidence-name">{capital(name)}</span>
      <span className="evidence-value">{valueWords(of)}</span>
      <span className="evidence-source quiet">
        {`${capital(place)}. For ${appliesTo}.`}
        {conflicts && ` Others disagree (${conflicts.ids.map(nameOf).join('; ')}): ${conflicts.why}.`}
      </span>
      <span className={`evidence-known evidence-${status.replace(' ', '-')}`}>{KNOWN[status]}</span>
    </>
  );
}

function valueWords({ value, low, high, unit }: Entry) {
  return (
    <>
      <strong>{threeFigures(value)}</strong>
      {unitWords(unit)}
      {low < high && <span className="quiet">{` ${threeFigures(low)} to ${threeFigures(high)}`}</span>}
    </>
  );
}

const nameOf = (id: string): string => {
  const { name, value, unit } = entry(id);
  return `${name} ${threeFigures(value)}${unitWords(unit)}`;
};

const unitWords = (unit: string): string => (unit === '1' ? '' : unit === 'degC' ? ' °C' : ` ${unit}`);

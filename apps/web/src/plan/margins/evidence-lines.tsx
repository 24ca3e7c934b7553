/** The evidence behind a figure: value, range, source, and whether anybody read it there. */
import { type Entry, entry } from '@bonewright/evidence';
import { Link } from 'wouter';
import { KNOWN, numberAddress, sourceWords, unitWords } from '../../numbers/entry-words.ts';
import { capital } from '../../words/patient.ts';
import { threeFigures } from '../words.ts';

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
  const { id, name, source, status, conflicts, appliesTo } = of;
  return (
    <>
      <Link href={numberAddress(id)} className="evidence-name">
        {capital(name)}
      </Link>
      <span className="evidence-value">{valueWords(of)}</span>
      <span className="evidence-source quiet">
        {`${capital(sourceWords(source))}. For ${appliesTo}.`}
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

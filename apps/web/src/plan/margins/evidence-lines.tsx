/** The evidence behind a figure: value, range, source, and whether anybody read it there. */
import { entry } from '@bonewright/evidence';
import { threeFigures } from '../words.ts';

const KNOWN: Readonly<Record<string, string>> = {
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
        <EvidenceLine key={id} id={id} />
      ))}
    </ul>
  );
}

function EvidenceLine({ id }: { readonly id: string }) {
  const { name, unit, value, low, high, source, status, conflicts, appliesTo } = entry(id);
  const range = low === high ? '' : `, ${threeFigures(low)} to ${threeFigures(high)}`;
  const place = [source.title, source.place, source.year].filter(Boolean).join(', ');
  return (
    <li className={status === 'memory' ? 'evidence-memory' : undefined}>
      <span className="evidence-name">
        {name}: <strong>{threeFigures(value)}</strong>
        {unit === '1' ? '' : ` ${unit}`}
        {range}
      </span>
      <span className="quiet">{`${place}. ${KNOWN[status] ?? status}. For ${appliesTo}.`}</span>
      {conflicts && <span className="quiet">{`Others disagree (${conflicts.ids.join(', ')}): ${conflicts.why}`}</span>}
    </li>
  );
}

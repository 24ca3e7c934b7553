/** What the shaded ranges are, whose they are, and how far they can be trusted. */
import { LANES, usualOf, usualWords } from '@bonewright/ward';

export function UsualBehind({ species }: { readonly species: string }) {
  const rows = LANES.flatMap(({ key, word }) => usualOf(species, key).map((usual) => ({ word, usual })));
  if (rows.length === 0)
    return <p className="caption">No published heart rate, breathing or temperature of this species was found.</p>;
  return (
    <details className="chart-behind">
      <summary>Shaded: usual when awake, not what to aim at asleep</summary>
      <ul>
        {rows.map(({ word, usual }) => (
          <li key={usual.entry.id}>
            {`${word} ${usualWords(usual)}, ${usual.entry.appliesTo}. ${usual.entry.source.title}${
              usual.entry.status === 'memory' ? '; from memory, not checked' : ''
            }${usual.isWeak && usual.entry.note ? `; ${usual.entry.note}` : ''}.`}
          </li>
        ))}
      </ul>
    </details>
  );
}

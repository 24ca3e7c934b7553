/** No pin is left to do: what was left out and why, and what comes next. */
import type { Theatre } from '@bonewright/casebook';

interface AllDoneProps {
  readonly theatre: Theatre;
  readonly onTable: () => void;
}

export function AllDone({ theatre, onTable }: AllDoneProps) {
  const out = theatre.pins.flatMap(({ leftOut }) => (leftOut ? [leftOut.value] : []));
  return (
    <section aria-labelledby="done-title" className="theatre-column theatre-done">
      <h3 id="done-title">What is left</h3>
      <ul className="theatre-checks">
        {out.map(({ pin, why }) => (
          <li key={pin}>
            P{pin} was left out: {why}
          </li>
        ))}
      </ul>
      <p className="theatre-note">
        Film both views before closing and lay them beside the plan. Then the column: putty, minutes, counts.
      </p>
      <button type="button" className="button button-main" onClick={onTable}>
        To putty and counts
      </button>
    </section>
  );
}

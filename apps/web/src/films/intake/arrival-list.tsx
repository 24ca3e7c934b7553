/** Films on their way in, a line each: what waits, what is read, what was refused and why. */
import { FieldWhy } from '../../form/field.tsx';
import { isBusy, type Line } from './arrivals.ts';
import type { Intake } from './use-intake.ts';

const WORDS = { waiting: 'waits', reading: 'is read', in: 'is in', refused: 'refused' } as const;
/** Names of what is no film that are written out. */
const MOST_NAMES = 3;

export function ArrivalList({ intake }: { readonly intake: Intake }) {
  const { lines, noFilms } = intake.arrivals;
  if (lines.length === 0 && noFilms.length === 0) return null;
  const done = lines.filter(({ state }) => state === 'in' || state === 'refused').length;
  return (
    <section className="arrivals" aria-label="Films coming in">
      <p className="arrivals-head">
        <span role="status">
          {isBusy(intake.arrivals)
            ? `${done} of ${lines.length} read`
            : lines.length > 0
              ? `${lines.length === 1 ? '1 file was' : `${lines.length} files were`} not taken in`
              : 'All films are in'}
        </span>
        {!isBusy(intake.arrivals) && (
          <button type="button" className="button-small" onClick={intake.dismissAll}>
            Close
          </button>
        )}
      </p>
      <ul>
        {lines.map((line) => (
          <li key={line.key} className={line.state === 'in' ? 'arrival-in' : undefined}>
            <LineWords line={line} onDismiss={() => intake.dismiss(line.key)} />
          </li>
        ))}
      </ul>
      {noFilms.length > 0 && (
        <p className="caption">
          {noFilms.length === 1 ? '1 file is no film and was' : `${noFilms.length} files are no films and were`} left
          aside: {noFilms.slice(0, MOST_NAMES).join(', ')}
          {noFilms.length > MOST_NAMES && ' and others'}.
        </p>
      )}
    </section>
  );
}

function LineWords({ line, onDismiss }: { readonly line: Line; readonly onDismiss: () => void }) {
  if (line.why === null)
    return (
      <>
        <span className="arrival-name">{line.name}</span>
        <span className="quiet">{WORDS[line.state]}</span>
      </>
    );
  return (
    <>
      <FieldWhy why={line.why} />
      <button type="button" className="button-small" onClick={onDismiss}>
        Close
      </button>
    </>
  );
}

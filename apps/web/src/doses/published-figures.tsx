/** Published figures of a drug side by side, those of the patient's own species first. None is chosen until somebody takes it. */
import type { DoseFigure, Source } from '@bonewright/evidence';
import { type Relation, rangeWords, type Shown } from '@bonewright/ward';
import { VerdictMark } from '../drawing/verdict-mark.tsx';

interface PublishedFiguresProps {
  readonly shown: readonly Shown[];
  readonly unit: 'mg' | 'U';
  readonly taken: string;
  readonly onTake: (figure: DoseFigure) => void;
}

const WHOSE: Readonly<Record<Relation, string>> = {
  own: 'own species',
  general: 'its kind in general',
  other: 'another species',
};

export function PublishedFigures({ shown, unit, taken, onTake }: PublishedFiguresProps) {
  if (shown.length === 0) return <p className="quiet">No published figure is kept here. Type the dose, and say why.</p>;
  const near = shown.filter(({ relation }) => relation !== 'other');
  const far = shown.filter(({ relation }) => relation === 'other');
  const list = (some: readonly Shown[]) => (
    <ul className="dose-figures">
      {some.map(({ figure, relation }) => (
        <FigureItem
          key={figure.id}
          {...{ figure, relation, unit }}
          isTaken={figure.id === taken}
          onTake={() => onTake(figure)}
        />
      ))}
    </ul>
  );
  if (near.length === 0)
    return (
      <>
        <p>None of this species. These are of other animals:</p>
        {list(far)}
      </>
    );
  return (
    <>
      {list(near)}
      {far.length > 0 && (
        <details open={far.some(({ figure }) => figure.id === taken) || undefined}>
          <summary>Of other animals: {far.length}</summary>
          {list(far)}
        </details>
      )}
    </>
  );
}

interface FigureItemProps extends Shown {
  readonly unit: 'mg' | 'U';
  readonly isTaken: boolean;
  readonly onTake: () => void;
}

function FigureItem({ figure, relation, unit, isTaken, onTake }: FigureItemProps) {
  const { studied, n, source, status, note, routes, everyHours, together, standing, conflicts } = figure;
  const seen = status === 'memory' ? <strong>Unverified, from memory</strong> : 'Seen';
  return (
    <li>
      <button
        type="button"
        className="button-small"
        aria-pressed={isTaken}
        aria-label={`Take ${rangeWords(figure)} ${unit} a kilogram, ${studied}`}
        onClick={onTake}
      >
        {isTaken ? 'Taken' : 'Take'}
      </button>
      <div>
        <p>
          <b>
            {rangeWords(figure)} {unit}/kg
          </b>{' '}
          {routes.join(', ') || 'route not said'}
          {everyHours && `, every ${[...new Set(everyHours)].join('-')} h`}
          {together && `; together: ${together}`}
        </p>
        <p className="caption">
          {studied}
          {!/(an)?other species/.test(studied) && ` (${WHOSE[relation]})`}
          {n && `, n = ${n}`}. {sourceWords(source)}. {seen}
          {note && `; ${note}`}.
        </p>
        {standing !== 'current' && (
          <p className="verdict verdict-stop">
            <VerdictMark verdict="stop" />
            {standing}
          </p>
        )}
        {conflicts && <p className="caption">{conflicts.why}</p>}
      </div>
    </li>
  );
}

const sourceWords = ({ title, year, place }: Source): string => [title, year, place].filter(Boolean).join(', ');

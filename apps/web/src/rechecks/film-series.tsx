/** Films of every visit side by side in the order of time, one row for each view, under the same levels. */
import { type CaseState, type FilmSet, type FilmState, filmsBefore, type View } from '@bonewright/casebook';
import { isPlaced, onFilm, placePlan } from '@bonewright/film';
import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import { useOpenFilm } from '../films/engine/use-open-film.ts';
import { setName } from '../films/later/occasion-words.ts';
import type { FourClicks } from '../films/marks/working.ts';
import { AS_OPENED, type Levels } from '../films/plate/looking.ts';
import { filmOfView } from '../films/trace/use-joining.ts';
import { FieldWhy } from '../form/field.tsx';
import { capital } from '../words/patient.ts';
import { SeriesPlate } from './series-plate.tsx';

interface FilmSeriesProps {
  readonly state: CaseState;
  readonly sets: readonly FilmSet[];
}

const VIEWS: readonly View[] = ['craniocaudal', 'mediolateral'];

export function FilmSeries({ state, sets }: FilmSeriesProps) {
  const [levels, setLevels] = useState(AS_OPENED);
  const before = filmsBefore(state);
  const columns = [
    {
      name: 'Before',
      craniocaudal: filmOfView(before, 'craniocaudal'),
      mediolateral: filmOfView(before, 'mediolateral'),
    },
    ...sets.map((set) => ({ ...set, name: setName(set) })),
  ];
  return (
    <section aria-labelledby="series-title" className="series">
      <header className="series-head">
        <h2 id="series-title">Films, in the order of time</h2>
        <span className="quiet">One set of levels for all: drag with the right button, or press I to invert.</span>
        <Link href={`/case/${state.caseId}/films?later`} className="button">
          Add or compare films
        </Link>
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide row of films is scrolled with the keys */}
      <section className="series-scroll" tabIndex={0} aria-label="Films of every visit">
        <table className="series-table">
          <thead>
            <tr>
              <th scope="col">
                <span className="sr-only">view</span>
              </th>
              {columns.map(({ name }) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {VIEWS.map((view) => (
              <tr key={view}>
                <th scope="row">{capital(view)}</th>
                {columns.map((column) => (
                  <td key={column.name}>
                    <SeriesFilm
                      film={column[view]}
                      name={`${column.name}, ${view}`}
                      levels={levels}
                      onLevels={setLevels}
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

interface SeriesFilmProps {
  readonly film: FilmState | null;
  readonly name: string;
  readonly levels: Levels;
  readonly onLevels: (levels: Levels) => void;
}

function SeriesFilm({ film, ...props }: SeriesFilmProps) {
  if (!film) return <p className="series-none">no film of this view</p>;
  return <OpenedFilm film={film} {...props} />;
}

function OpenedFilm({ film, ...props }: SeriesFilmProps & { readonly film: FilmState }) {
  const { sha256, fileName } = film.file.value;
  const opening = useOpenFilm(sha256, fileName);
  const clicks = useMemo(() => boneOn(film), [film]);
  if (opening.kind === 'open') return <SeriesPlate film={opening.film} clicks={clicks} {...props} />;
  return (
    <div className="series-plate series-wait">
      {opening.kind === 'failed' ? <FieldWhy why={opening.why} /> : `Reading ${fileName}`}
    </div>
  );
}

/** Where the bone lies on a film: by its clicks, else by the plan laid over it. */
function boneOn({ clicks, placing }: FilmState): FourClicks {
  const [proximal, distal] = clicks?.value.segments ?? [];
  if (proximal && distal) return [proximal.from, proximal.to, distal.from, distal.to];
  const placed = placing ? placePlan(placing.value.matches, placing.value.isMirrored) : null;
  if (!placing || !placed || !isPlaced(placed)) return [null, null, null, null];
  const along = placing.value.matches.map(({ plan }) => plan[0]).toSorted((a, b) => a - b);
  const [first, last] = [onFilm(placed, [along[0] ?? 0, 0]), onFilm(placed, [along.at(-1) ?? 0, 0])];
  return [first, first, last, last];
}

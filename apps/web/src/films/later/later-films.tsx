/** Films taken since the plan was chosen: one of them open with the plan laid over it, the others a press away. */
import './later.css';
import { type CaseState, type FilmSet, type FilmState, laterFilmSets } from '@bonewright/casebook';
import { useMemo } from 'react';
import { Link, useSearch } from 'wouter';
import type { Append } from '../../sync/new-event.ts';
import { ChooseFilms } from '../intake/choose-films.tsx';
import type { Intake } from '../intake/use-intake.ts';
import { useLevels } from '../plate/use-levels.ts';
import { TakeOut } from '../take-out.tsx';
import { LaterPanel } from './later-panel.tsx';
import { setName } from './occasion-words.ts';
import { usePlanInViews } from './use-plan-figure.ts';

interface LaterFilmsProps {
  readonly state: CaseState;
  readonly intake: Intake;
  readonly append: Append;
}

const filmsOf = ({ craniocaudal, mediolateral, others }: FilmSet): readonly FilmState[] =>
  [craniocaudal, mediolateral, ...others].filter((film) => film !== null);

export function LaterFilms({ state, intake, append }: LaterFilmsProps) {
  const wanted = new URLSearchParams(useSearch()).get('later');
  const sets = useMemo(() => laterFilmSets(state), [state]);
  const plan = usePlanInViews(state);
  const levelsOf = useLevels();
  const all = sets.flatMap((set) => filmsOf(set).map((film) => ({ set, film })));
  const open = all.find(({ film }) => film.filmId === wanted) ?? all.at(0);
  if (!open)
    return (
      <section className="later-none" aria-labelledby="later-none-title">
        <h2 id="later-none-title">No later films yet</h2>
        <p className="lead">
          Film both views before closing, and after. Drop them here: the plan is laid over each by three points, and its
          pins are compared with the plan.
        </p>
        <ChooseFilms intake={intake} word="Choose films" isMain />
      </section>
    );
  return (
    <div className="later">
      <nav className="later-strip" aria-label="Later films">
        {sets.map((set) => (
          <div key={setName(set)} className="later-set">
            <span className="later-set-name">{setName(set)}</span>
            {filmsOf(set).map((film) => (
              <Link
                key={film.filmId}
                href={`/case/${state.caseId}/films?later=${film.filmId}`}
                className="button-small"
                aria-current={film === open.film ? 'page' : undefined}
              >
                {film.view.value ?? film.file.value.fileName}
                {film.placing ? '' : ', not compared'}
              </Link>
            ))}
          </div>
        ))}
      </nav>
      <LaterPanel
        key={open.film.filmId}
        {...open}
        state={state}
        plan={plan}
        linked={levelsOf('first')}
        append={append}
      />
      <p className="film-file later-file">
        <span className="caption">{open.film.file.value.fileName}</span>
        <TakeOut filmId={open.film.filmId} append={append} />
        <ChooseFilms intake={intake} word="Add later films" />
      </p>
    </div>
  );
}

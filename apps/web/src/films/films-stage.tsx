/** The Films stage: two views side by side, what each still needs, and what they say together. */
import './films.css';
import './received/received.css';
import { type CaseState, laterFilmSets, occasionOf } from '@bonewright/casebook';
import { useState } from 'react';
import { Link, useSearch } from 'wouter';
import type { Append } from '../sync/new-event.ts';
import { prepareThread } from './engine/film-thread.ts';
import { FilmPanel } from './film-panel.tsx';
import { Findings } from './findings/findings.tsx';
import { ChooseFilms } from './intake/choose-films.tsx';
import { DropFilms } from './intake/drop-films.tsx';
import { NoFilms } from './intake/no-films.tsx';
import { useIntake } from './intake/use-intake.ts';
import { LaterFilms } from './later/later-films.tsx';
import { occasionNow } from './later/occasion-words.ts';
import { OtherFilms } from './other-films.tsx';
import { useLevels } from './plate/use-levels.ts';
import { ReceivedFilms } from './received/received-films.tsx';
import { ReductionScreen } from './reduce/reduction-screen.tsx';
import { isWhole, shownFilms } from './shown-films.ts';

interface FilmsStageProps {
  readonly state: CaseState;
  readonly append: Append;
  readonly isOwn: (seq: number) => boolean;
}

const PLACES = ['first', 'second'] as const;

prepareThread();

export function FilmsStage({ state, append, isOwn }: FilmsStageProps) {
  const [isReducing, reduce] = useState(false);
  const isLater = new URLSearchParams(useSearch()).has('later');
  const intake = useIntake(state.films, isLater ? occasionNow(state) : null, append);
  const levelsOf = useLevels();
  const before = intake.films.filter((film) => occasionOf(state, film) === 'before');
  const shown = shownFilms(before);
  const current = shown.findIndex((film) => !isWhole(film));
  if (isReducing) return <ReductionScreen state={state} append={append} onClose={() => reduce(false)} />;
  const received = <ReceivedFilms caseId={state.caseId} isWanting={isLater || shown.length < 2} intake={intake} />;
  if (isLater)
    return (
      <DropFilms intake={intake}>
        <Occasions state={state} isLater />
        {received}
        <LaterFilms state={state} intake={intake} append={append} />
      </DropFilms>
    );
  if (shown.length === 0)
    return (
      <DropFilms intake={intake}>
        {received}
        <NoFilms intake={intake} />
      </DropFilms>
    );
  return (
    <DropFilms intake={intake}>
      <Occasions state={state} isLater={false} />
      {received}
      <div className="films">
        {shown.map((film, i) => (
          <FilmPanel
            key={film.filmId}
            film={film}
            place={PLACES[i] ?? 'second'}
            isCurrent={i === current}
            isOwn={isOwn}
            intake={intake}
            linked={levelsOf(PLACES[i] ?? 'second')}
            append={intake.appendTo(film.filmId)}
          />
        ))}
        {shown.length === 1 && (
          <div className="film film-second film-missing-view">
            <p className="lead">
              One view says nothing about the other way a bone bends. Drop the second film here, or choose it.
            </p>
            <ChooseFilms intake={intake} word="Choose the second film" isMain />
          </div>
        )}
        <div className="films-findings">
          <Findings state={state} shown={shown} isOwn={isOwn} append={append} onReduce={() => reduce(true)} />
          <OtherFilms films={before} shown={shown} intake={intake} append={append} />
        </div>
      </div>
    </DropFilms>
  );
}

/** Films of before and later films are two pages; the second is offered once there is a plan to lay over them. */
function Occasions({ state, isLater }: { readonly state: CaseState; readonly isLater: boolean }) {
  const later = laterFilmSets(state);
  if (!isLater && later.length === 0 && state.construct === null) return null;
  const count = later.reduce((n, { craniocaudal, mediolateral, others }) => {
    return n + Number(craniocaudal !== null) + Number(mediolateral !== null) + others.length;
  }, 0);
  const to = `/case/${state.caseId}/films`;
  return (
    <nav className="film-occasions" aria-label="Films by occasion">
      <Link href={to} aria-current={isLater ? undefined : 'page'}>
        Before the operation
      </Link>
      <Link href={`${to}?later`} aria-current={isLater ? 'page' : undefined}>
        Later films, against the plan{count > 0 && ` (${count})`}
      </Link>
    </nav>
  );
}

import type { FilmState } from '@bonewright/casebook';
import type { Append } from '../sync/new-event.ts';
import { moment } from '../words/time.ts';
import { ChooseFilms } from './intake/choose-films.tsx';
import type { Intake } from './intake/use-intake.ts';
import { TakeOut } from './take-out.tsx';

interface OtherFilmsProps {
  readonly films: readonly FilmState[];
  readonly shown: readonly FilmState[];
  readonly intake: Intake;
  readonly append: Append;
}

/** Films that lie behind the two shown, and a way to add more. */
export function OtherFilms({ films, shown, intake, append }: OtherFilmsProps) {
  const others = films.filter((film) => !shown.includes(film));
  return (
    <section className="other-films">
      {others.length > 0 && (
        <>
          <h3>Other films of this case</h3>
          <ul>
            {others.map(({ filmId, file, view }) => (
              <li key={filmId}>
                <span>
                  {view.value ?? 'view not said'}, {file.value.fileName}
                  <span className="caption"> added {moment(file.at)}</span>
                </span>
                <TakeOut filmId={filmId} append={append} />
              </li>
            ))}
          </ul>
        </>
      )}
      <ChooseFilms intake={intake} word="Add films" />
    </section>
  );
}

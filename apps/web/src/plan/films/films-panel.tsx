/** Both views with the plan in them, the craniocaudal one first. */
import './plan-films.css';
import type { FilmState } from '@bonewright/casebook';
import type { Case } from '@bonewright/construct';
import type { ReductionMove } from '@bonewright/film';
import { memo } from 'react';
import type { Placement } from '../../drawing/geometry/placement.ts';
import { PlanOnFilm } from './plan-on-film.tsx';
import type { FilmPicture } from './reduced-picture.tsx';
import { useHeldSpace } from './use-held-space.ts';

interface FilmsPanelProps {
  readonly films: readonly FilmState[];
  readonly pictures: ReadonlyMap<string, FilmPicture>;
  readonly reduction: ReductionMove | undefined;
  readonly patientCase: Case;
  readonly placement: Placement;
  readonly selected: number;
}

const VIEWS = ['craniocaudal', 'mediolateral'] as const;

export const FilmsPanel = memo(({ films, pictures, reduction, patientCase, placement, selected }: FilmsPanelProps) => {
  const isBare = useHeldSpace();
  const shown = VIEWS.flatMap((view) => films.findLast((film) => film.view.value === view) ?? []);
  return (
    <div className="plan-films">
      {shown.map((film) => (
        <PlanOnFilm
          key={film.filmId}
          film={film}
          picture={pictures.get(film.filmId) ?? null}
          reduction={reduction}
          patientCase={patientCase}
          placement={placement}
          selected={selected}
          isBare={isBare}
        />
      ))}
      {shown.length === 0 && <p className="quiet">No films in this case: the plan stands on typed measures.</p>}
    </div>
  );
});

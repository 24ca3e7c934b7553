/** One film with the plan drawn to scale in it, its distal part moved to where it lies reduced. */
import type { FilmState } from '@bonewright/casebook';
import type { Case } from '@bonewright/construct';
import type { Pixel, ReductionMove } from '@bonewright/film';
import { useMemo } from 'react';
import type { Placement, Point3 } from '../../drawing/geometry/placement.ts';
import { useSize } from '../../drawing/use-size.ts';
import { figure } from '../words.ts';
import { DrawnPlan } from './drawn-plan.tsx';
import { type FilmMap, filmMap } from './film-map.ts';
import { outlineOf } from './outline.ts';
import { FilmBelow, type FilmPicture } from './reduced-picture.tsx';
import { windowOn } from './window-on.ts';

interface PlanOnFilmProps {
  readonly film: FilmState;
  readonly picture: FilmPicture | null;
  /** As it was kept on the Films stage; absent, the parts lie in one line. */
  readonly reduction: ReductionMove | undefined;
  readonly patientCase: Case;
  readonly placement: Placement;
  readonly selected: number;
  /** Nothing is drawn over the film. */
  readonly isBare: boolean;
}

const TITLES = { craniocaudal: 'Craniocaudal', mediolateral: 'Mediolateral' } as const;
const BAR_MM = 10;
/** The window moves on only when the plan has grown by this much: a drag must not make the film tremble. */
const STEADY_MM = 4;

export function PlanOnFilm(props: PlanOnFilmProps) {
  const { film, reduction, patientCase } = props;
  const { lengthMm } = patientCase.bone;
  const map = useMemo(() => filmMap(film, lengthMm, reduction), [film, lengthMm, reduction]);
  const view = film.view.value ?? 'craniocaudal';
  const towards = film.clicks?.value.columnTowards;
  return (
    <figure className="plan-film">
      <figcaption className="side-head">
        <h2>{TITLES[view]}</h2>
        <span className="quiet">{towards ? `${towards} to the right` : ''}</span>
      </figcaption>
      {map ? (
        <Plate {...props} map={map} view={view} />
      ) : (
        <p className="film-missing">This film is not traced yet: the plan cannot be drawn on it.</p>
      )}
    </figure>
  );
}

interface PlateProps extends PlanOnFilmProps {
  readonly map: FilmMap;
  readonly view: keyof typeof TITLES;
}

function Plate({ map, view, picture, patientCase, placement, selected, isBare }: PlateProps) {
  const [plate, size] = useSize<HTMLDivElement>();
  const place = ([s, medial, cranial]: Point3): Pixel => map.pixel(s, view === 'craniocaudal' ? medial : cranial);
  const { viewBox, filmPxPerScreenPx: unit } = windowOn(
    seen(map, patientCase, placement, place),
    size,
    STEADY_MM / map.mmPerPixel,
  );
  const barPx = BAR_MM / map.mmPerPixel / unit;
  return (
    <div className="film-plate">
      <div ref={plate} className="film-window">
        <FilmBelow {...{ map, picture, isBare, viewBox, unit }} width={size.width} height={size.height} />
        <svg
          viewBox={viewBox}
          width={size.width}
          height={size.height}
          className="film-drawing"
          role="img"
          aria-label={`${TITLES[view]} film with the plan drawn to scale`}
        >
          {!isBare && <DrawnPlan {...{ placement, place, selected, unit }} pxPerMm={1 / map.mmPerPixel} />}
        </svg>
      </div>
      <p className="film-caption">
        <span>{movedWords(map)}</span>
        <span className="film-bar">
          {`${BAR_MM} mm`}
          <svg width={barPx + 2} height="10" aria-hidden="true">
            <path d={`M1 1V9M1 5H${barPx + 1}M${barPx + 1} 1V9`} stroke="currentColor" fill="none" />
          </svg>
        </span>
      </p>
    </div>
  );
}

/** What the plate must show: the whole bone and everything put in it. */
function seen(map: FilmMap, { bone }: Case, { pins, columns }: Placement, place: (point: Point3) => Pixel): Pixel[] {
  return [
    map.pixel(0, 0),
    map.pixel(bone.lengthMm, 0),
    ...pins.flatMap((pin) => [place(pin.tip), place(pin.end)]),
    ...columns.flatMap(({ line, diameterMm }) => outlineOf(line.map(place), diameterMm / 2 / map.mmPerPixel)),
  ];
}

function movedWords({ movedDeg, movedMm }: FilmMap): string {
  if (movedDeg === null || movedMm === null) return '';
  return `moved ${figure(Math.abs(movedDeg))}°, ${figure(Math.abs(movedMm))} mm`;
}

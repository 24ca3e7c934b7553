/** The scale of each film, what it rests on, and what a ball at the wrong height would do. */
import type { FilmState } from '@bonewright/casebook';
import { figure, threeFigures } from '../../plan/words.ts';
import { capital } from '../../words/patient.ts';

type Calibration = NonNullable<FilmState['calibration']>['value'];

interface ScaleBoxProps {
  readonly films: readonly FilmState[];
  readonly lengthMm: number | null;
}

export function ScaleBox({ films, lengthMm }: ScaleBoxProps) {
  const basis = [...new Set(films.flatMap(({ calibration }) => (calibration ? [basisOf(calibration.value)] : [])))];
  const doubt = Math.max(...films.map(({ trace }) => trace?.value.ballHeightErrorPercent ?? 0));
  return (
    <section className="side-part" aria-labelledby="scale-title">
      <header className="side-head">
        <h3 id="scale-title">Scale</h3>
        <span className="quiet">{basis.join(', ')}</span>
      </header>
      <dl className="scale-list">
        {films.map((film) => (
          <div key={film.filmId}>
            <dt>{capital(film.view.value ?? film.file.value.fileName)}</dt>
            <dd>
              <b>{film.trace?.value.mmPerPixel.value?.toFixed(4) ?? 'not measured'}</b>
              <span className="caption">± {threeFigures(film.trace?.value.mmPerPixel.sd ?? 0)} mm a pixel</span>
            </dd>
          </div>
        ))}
      </dl>
      {doubt > 0 && (
        <p className="caption">
          If the ball lay 5 mm above or below the bone, every length is {figure(doubt)} % out
          {lengthMm !== null &&
            `: the bone is then ${figure(lengthMm * (1 - doubt / 100))} to ${figure(lengthMm * (1 + doubt / 100))} mm long`}
          .
        </p>
      )}
    </section>
  );
}

function basisOf(calibration: Calibration): string {
  switch (calibration.kind) {
    case 'ball':
      return `from the ${figure(calibration.diameterMm, calibration.diameterMm % 1 === 0 ? 0 : 2)} mm ball in the film`;
    case 'scale':
      return 'from a scale typed in';
    case 'implant':
      return `from an implant of ${figure(calibration.diameterMm, 2)} mm`;
    case 'geometry':
      return 'from the geometry of the set-up';
  }
}

/** Walls against the eye: station by station, what was found, and what the surgeon says instead. */
import type { Measured } from '@bonewright/film';
import { figure } from '../../plan/words.ts';
import { stationAt } from './corrections.ts';
import type { Correcting } from './use-correcting.ts';

export function CorrectStep({ correcting }: { readonly correcting: Correcting }) {
  const { trace, place, all, isLeftOut, isTouched } = correcting;
  const station = place && stationAt(trace, place);
  if (!place || !station)
    return (
      <span className="step-marks">
        <button type="button" className="button-small" onClick={correcting.start}>
          correct a wall
        </button>
        {all.length > 0 && (
          <span className="caption">
            {all.length === 1 ? '1 correction stands' : `${all.length} corrections stand`}
          </span>
        )}
      </span>
    );
  return (
    <>
      <span className="step-marks">
        <button type="button" className="button-small" onClick={() => correcting.step(-1)}>
          − proximally
        </button>
        <button type="button" className="button-small" onClick={() => correcting.step(1)}>
          + distally
        </button>
        <button type="button" className="button-small" aria-pressed="true" onClick={correcting.stop}>
          done
        </button>
      </span>
      <span className="correct-station" aria-live="polite">
        {place.segment} part, {figure(place.sMm)} mm: outer {words(station.outerMm)}, canal {words(station.canalMm)}
      </span>
      <span className="step-marks">
        {!isLeftOut && (
          <button type="button" className="button-small" onClick={correcting.leaveOut}>
            leave it out
          </button>
        )}
        {isTouched && (
          <button type="button" className="button-small" onClick={correcting.undo}>
            as it was found
          </button>
        )}
        {all.length > 1 && (
          <button type="button" className="button-small" onClick={correcting.undoAll}>
            take back all {all.length}
          </button>
        )}
      </span>
      <span className="caption">
        Drag a wall on the film, or <kbd>Tab</kbd> to it and move it with the arrows; <kbd>Page Down</kbd> is the next
        station. Its neighbours follow over one width of the bone.
      </span>
    </>
  );
}

const words = ({ value, sd, why }: Measured): string =>
  value === null ? `not measured${why ? `, ${why}` : ''}` : `${figure(value, 2)} ± ${figure(sd ?? 0, 2)} mm`;

/** The scale of a film at the bone: of its trace, or of its calibration where it is not traced yet. */
import type { FilmState } from '@bonewright/casebook';
import type { Measured } from '@bonewright/film';
import { useEffect, useState } from 'react';
import type { FilmOpening } from '../engine/use-open-film.ts';

const NONE: Measured = { value: null, sd: null, why: 'the film has no scale' };

export function useScale({ trace, calibration }: FilmState, opening: FilmOpening): Measured {
  const [found, setFound] = useState<{ readonly of: string; readonly scale: Measured } | null>(null);
  const open = opening.kind === 'open' ? opening.film : null;
  // A calibration is a new object with every entry: the text changes only where it does.
  const wanted = trace || !calibration ? null : JSON.stringify(calibration.value);
  useEffect(() => {
    if (wanted === null || !open) return;
    let isWanted = true;
    // What cannot be read of a calibration is said beside its step.
    const show = (scale: Measured) => isWanted && setFound({ of: wanted, scale });
    open.scale(JSON.parse(wanted)).then(
      ({ mmPerPixel }) => show(mmPerPixel),
      () => show(NONE),
    );
    return () => {
      isWanted = false;
    };
  }, [wanted, open]);
  if (trace) return trace.value.mmPerPixel;
  return found !== null && found.of === wanted ? found.scale : NONE;
}

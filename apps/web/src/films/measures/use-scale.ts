/** The scale of a film at the bone: of its trace, or of its calibration where it is not traced yet. */
import type { FilmState } from '@bonewright/casebook';
import type { Scale } from '@bonewright/film';
import { useEffect, useState } from 'react';
import type { FilmOpening } from '../engine/use-open-film.ts';

/** A scale, and what a ball 5 mm off the bone's height does to it. */
export type FilmScale = Pick<Scale, 'mmPerPixel' | 'ballHeightErrorPercent'>;

const NONE: FilmScale = {
  mmPerPixel: { value: null, sd: null, why: 'the film has no scale' },
  ballHeightErrorPercent: null,
};

export function useScale({ trace, calibration }: FilmState, opening: FilmOpening): FilmScale {
  const [found, setFound] = useState<{ readonly of: string; readonly scale: FilmScale } | null>(null);
  const open = opening.kind === 'open' ? opening.film : null;
  // A calibration is a new object with every entry: the text changes only where it does.
  const wanted = trace || !calibration ? null : JSON.stringify(calibration.value);
  useEffect(() => {
    if (wanted === null || !open) return;
    let isWanted = true;
    // What cannot be read of a calibration is said beside its step.
    const show = (scale: FilmScale) => isWanted && setFound({ of: wanted, scale });
    open.scale(JSON.parse(wanted)).then(show, () => show(NONE));
    return () => {
      isWanted = false;
    };
  }, [wanted, open]);
  if (trace) return trace.value;
  return found !== null && found.of === wanted ? found.scale : NONE;
}

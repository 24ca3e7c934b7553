/** The plan's pins looked for on a later film, in the film's own thread, and what they say against the plan. */

import type { ViewFigure } from '@bonewright/construct';
import { value } from '@bonewright/evidence';
import {
  expectedRods,
  type FoundRod,
  isFound,
  type NoRod,
  type PinAgainstPlan,
  type Placing,
  pinsAgainstPlan,
  plannedRods,
} from '@bonewright/film';
import { useEffect, useMemo, useState } from 'react';
import type { OpenFilm } from '../engine/open-film.ts';

export interface FoundPins {
  /** Null while they are looked for. */
  readonly against: readonly PinAgainstPlan[] | null;
  readonly rods: readonly FoundRod[];
}

const NOT_YET: FoundPins = { against: null, rods: [] };

export function useFoundPins(
  film: OpenFilm | null,
  placing: Placing | null,
  figure: ViewFigure,
  fractureMm: number,
): FoundPins {
  const planned = useMemo(() => plannedRods(figure, fractureMm), [figure, fractureMm]);
  // A placing is a new object with every entry: the text changes only where the plan lies elsewhere.
  const laid = placing && JSON.stringify(placing);
  const [found, setFound] = useState<{ readonly of: string; readonly rods: readonly (FoundRod | NoRod)[] } | null>(
    null,
  );
  useEffect(() => {
    if (!film || laid === null) return;
    let isWanted = true;
    const on: Placing = JSON.parse(laid);
    const expected = expectedRods(on, planned);
    const widest = Math.max(...expected.map(({ widthPx }) => widthPx));
    const search = {
      reachPx: value('alignment.pin.search') * widest,
      turnDeg: value('alignment.pin.search-tilt'),
    };
    void film.pins(expected, search).then((rods) => isWanted && setFound({ of: laid, rods }));
    return () => {
      isWanted = false;
    };
  }, [film, laid, planned]);
  return useMemo(() => {
    if (laid === null || found?.of !== laid) return NOT_YET;
    const on: Placing = JSON.parse(laid);
    return { against: pinsAgainstPlan(on, planned, found.rods), rods: found.rods.filter(isFound) };
  }, [found, laid, planned]);
}

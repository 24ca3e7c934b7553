/** Traces a later film where the plan lies over it, on request, and records what was read as for any film. */
import type { FilmState } from '@bonewright/casebook';
import type { ViewFigure } from '@bonewright/construct';
import { faultLine, InputError } from '@bonewright/fault';
import { type Calibration, clicksByPlan, type Placing, type Towards, type Trace } from '@bonewright/film';
import { useState } from 'react';
import type { Append } from '../../sync/new-event.ts';
import type { OpenFilm } from '../engine/open-film.ts';

export interface TraceByPlan {
  readonly isRunning: boolean;
  readonly why: string | null;
  /** Null where it cannot be done yet. */
  readonly start: (() => void) | null;
}

interface TraceByPlanProps {
  readonly film: FilmState;
  readonly open: OpenFilm | null;
  readonly figure: ViewFigure;
  readonly placing: Placing | null;
  readonly towards: Towards | null;
  readonly append: Append;
}

export function useTraceByPlan({ film, open, figure, placing, towards, append }: TraceByPlanProps): TraceByPlan {
  const [isRunning, run] = useState(false);
  const [why, setWhy] = useState<string | null>(null);
  const clicks = placing && clicksByPlan(placing, figure);
  if (!open || !placing || !towards || !clicks) return { isRunning, why, start: null };
  const start = async () => {
    const { filmId } = film;
    const { segments, fractureLine, boneEnds } = clicks;
    const calibration: Calibration = film.calibration?.value ?? scaleOf(placing);
    run(true);
    try {
      const trace = await open.trace({ calibration, segments });
      if (!readAnyWall(trace)) return setWhy(noWalls(trace));
      append([
        ...(film.calibration ? [] : [{ kind: 'film-calibrated', payload: { filmId, calibration } } as const]),
        {
          kind: 'film-clicked',
          payload: { filmId, segments: [...segments], columnTowards: towards, boneEnds: [...boneEnds] },
        },
        { kind: 'film-traced', payload: { filmId, trace } },
        { kind: 'fracture-marked', payload: { filmId, line: [...fractureLine] } },
      ]);
      setWhy(null);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      setWhy(faultLine(error));
    } finally {
      run(false);
    }
  };
  return { isRunning, why, start: () => void start() };
}

/** Metal and putty can hide both walls all along; clicks laid by the plan would then only measure the plan. */
const readAnyWall = ({ segments }: Trace): boolean =>
  segments.every(({ stations }) => stations.some(({ outerMm }) => outerMm.value !== null));

function noWalls({ segments }: Trace): string {
  const notes = [...new Set(segments.flatMap((segment) => segment.notes.map((note) => note.replace(/^.*?: /, ''))))];
  return `No walls could be read (${notes.join('; ')}). Click the middle of both fragments instead.`;
}

/** The plan's own millimetres: lengths read with it can only be the plan's. */
function scaleOf({ pxPerMm }: Placing): Calibration {
  const { value = 1, sd = 0 } = pxPerMm;
  const perMm = value ?? 1;
  return { kind: 'scale', mmPerPixel: 1 / perMm, sdPercent: (100 * (sd ?? 0)) / perMm };
}

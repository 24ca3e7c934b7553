/** Traces a film as soon as its scale and clicks are recorded, and records what was found. */
import type { FilmState } from '@bonewright/casebook';
import { faultLine, InputError } from '@bonewright/fault';
import { useEffect, useState } from 'react';
import type { Append } from '../../sync/new-event.ts';
import type { FilmOpening } from '../engine/use-open-film.ts';

export type Tracing =
  | { readonly kind: 'idle' }
  | { readonly kind: 'running' }
  | { readonly kind: 'failed'; readonly why: string };

/** Work that another page began is left to it for so long. */
const OTHERS_FIRST_MS = 4000;
const IDLE: Tracing = { kind: 'idle' };

interface TracingProps {
  readonly film: FilmState;
  readonly opening: FilmOpening;
  readonly isOwn: (seq: number) => boolean;
  readonly append: Append;
}

export function useTracing({ film, opening, isOwn, append }: TracingProps): Tracing {
  const [tracing, setTracing] = useState<Tracing & { readonly of?: string }>(IDLE);
  const { calibration, clicks, trace, filmId } = film;
  const open = opening.kind === 'open' ? opening.film : null;
  const madeFrom =
    calibration && clicks && !trace
      ? `${calibration.at} ${clicks.at} ${JSON.stringify([calibration.value, clicks.value])}`
      : null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text stands for calibration and clicks, whose numbers change when others' entries come between
  useEffect(() => {
    if (madeFrom === null || !open || !calibration || !clicks) return;
    let isWanted = true;
    const run = async () => {
      setTracing({ kind: 'running', of: madeFrom });
      try {
        const found = await open.trace({ calibration: calibration.value, segments: clicks.value.segments });
        if (isWanted) append([{ kind: 'film-traced', payload: { filmId, trace: found } }]);
        if (isWanted) setTracing(IDLE);
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        if (isWanted) setTracing({ kind: 'failed', why: faultLine(error), of: madeFrom });
      }
    };
    const wait = isOwn(Math.max(calibration.seq, clicks.seq)) ? 0 : OTHERS_FIRST_MS;
    const timer = setTimeout(() => void run(), wait);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [madeFrom, open, filmId, append, isOwn]);
  return tracing.of === madeFrom ? tracing : IDLE;
}

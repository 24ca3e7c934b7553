/** Traces a film as soon as its scale and clicks are recorded, and records what was found. */
import type { FilmState } from '@bonewright/casebook';
import { faultLine, InputError } from '@bonewright/fault';
import { useEffect, useState } from 'react';
import type { Append } from '../../sync/new-event.ts';
import type { FilmOpening } from '../engine/use-open-film.ts';

export type Tracing =
  | { readonly kind: 'idle' }
  /** Somebody else marked the film: looking at it records nothing. */
  | { readonly kind: 'offered'; readonly start: () => void }
  | { readonly kind: 'running' }
  | { readonly kind: 'failed'; readonly why: string };

const IDLE: Tracing = { kind: 'idle' };

interface TracingProps {
  readonly film: FilmState;
  readonly opening: FilmOpening;
  readonly isOwn: (seq: number) => boolean;
  readonly append: Append;
}

export function useTracing({ film, opening, isOwn, append }: TracingProps): Tracing {
  const [tracing, setTracing] = useState<Tracing & { readonly of?: string }>(IDLE);
  const [asked, ask] = useState<string | null>(null);
  const { calibration, clicks, trace, filmId } = film;
  const open = opening.kind === 'open' ? opening.film : null;
  const madeFrom =
    calibration && clicks && !trace
      ? `${calibration.at} ${clicks.at} ${JSON.stringify([calibration.value, clicks.value])}`
      : null;
  const isDue = asked === madeFrom || isOwn(Math.max(calibration?.seq ?? 0, clicks?.seq ?? 0));
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text stands for calibration and clicks, whose numbers change when others' entries come between
  useEffect(() => {
    if (madeFrom === null || !isDue || !open || !calibration || !clicks) return;
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
    void run();
    return () => {
      isWanted = false;
    };
  }, [madeFrom, isDue, open, filmId, append]);
  if (madeFrom !== null && !isDue) return { kind: 'offered', start: () => ask(madeFrom) };
  return tracing.of === madeFrom ? tracing : IDLE;
}

/** What one film offers to look at: its own looks, and once the bone is marked the look that suits that part. */
import type { NamedLook } from '@bonewright/film';
import { useEffect, useMemo, useState } from 'react';
import type { OpenFilm } from '../engine/open-film.ts';
import type { FourClicks } from '../marks/working.ts';
import { lookOnBone } from './bone-look.ts';
import { type Levels, type Looking, lookedAt, type Offered } from './looking.ts';

export function useLooking(
  film: OpenFilm,
  clicks: FourClicks,
  levels: Levels,
): Offered & { readonly looking: Looking } {
  const { looks } = film.facts;
  const [onBone, setOnBone] = useState<NamedLook | null>(null);
  useEffect(() => {
    let isWanted = true;
    void lookOnBone(film, clicks).then((look) => isWanted && setOnBone(look));
    return () => {
      isWanted = false;
    };
  }, [film, clicks]);
  return useMemo(() => {
    const best = onBone ?? looks[0];
    if (!best) throw new Error('a film offers at least one look');
    const offered = { looks: onBone ? [...looks, onBone] : looks, best };
    return { ...offered, looking: lookedAt(levels, offered) };
  }, [looks, onBone, levels]);
}

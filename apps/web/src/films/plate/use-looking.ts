/** How one film is looked at: as the user chose, else on the bone once it is marked, else as the film opens. */
import type { NamedLook } from '@bonewright/film';
import { useEffect, useMemo, useState } from 'react';
import type { OpenFilm } from '../engine/open-film.ts';
import type { FourClicks } from '../marks/working.ts';
import { lookOnBone } from './bone-look.ts';
import { type Looking, openingLook } from './looking.ts';

export function useLooking(film: OpenFilm, clicks: FourClicks) {
  const { facts } = film;
  const [chosen, setLooking] = useState<Looking | null>(null);
  const [onBone, setOnBone] = useState<NamedLook | null>(null);
  useEffect(() => {
    let isWanted = true;
    void lookOnBone(film, clicks).then((look) => isWanted && setOnBone(look));
    return () => {
      isWanted = false;
    };
  }, [film, clicks]);
  const looks = useMemo(() => (onBone ? [...facts.looks, onBone] : facts.looks), [facts.looks, onBone]);
  const unchosen = useMemo(
    () => (onBone ? { preset: onBone.name, look: onBone.look } : openingLook(facts.looks)),
    [facts.looks, onBone],
  );
  return { looks, looking: chosen ?? unchosen, setLooking };
}

/** How one film is looked at: as the user chose, else on the bone once it is marked, else as the film opens. */
import type { NamedLook } from '@bonewright/film';
import { useEffect, useMemo, useState } from 'react';
import type { OpenFilm } from '../engine/open-film.ts';
import type { FourClicks } from '../marks/working.ts';
import { boneRegion } from './bone-region.ts';
import { type Looking, openingLook } from './looking.ts';

const ON_BONE = 'on the bone';

export function useLooking(film: OpenFilm, clicks: FourClicks) {
  const { facts } = film;
  const [chosen, setLooking] = useState<Looking | null>(null);
  const [onBone, setOnBone] = useState<NamedLook | null>(null);
  const region = useMemo(() => boneRegion(clicks, facts), [clicks, facts]);
  useEffect(() => {
    if (!region) return;
    let isWanted = true;
    const find = async () => {
      const window = await film.windowOn(region);
      if (isWanted) setOnBone({ name: ON_BONE, look: { kind: 'window', window, voiFunction: 'LINEAR' } });
    };
    void find();
    return () => {
      isWanted = false;
    };
  }, [film, region]);
  const looks = useMemo(() => (onBone ? [...facts.looks, onBone] : facts.looks), [facts.looks, onBone]);
  const unchosen = useMemo(
    () => (onBone ? { preset: onBone.name, look: onBone.look } : openingLook(facts.looks)),
    [facts.looks, onBone],
  );
  return { looks, looking: chosen ?? unchosen, setLooking };
}

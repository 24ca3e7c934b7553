/** The look that suits the part of a film that the clicks mark out: surround and ball count for nothing in it. */
import type { NamedLook } from '@bonewright/film';
import type { OpenFilm } from '../engine/open-film.ts';
import type { FourClicks } from '../marks/working.ts';
import { boneRegion, ROOM_FOR_LEVELS } from './bone-region.ts';

const ON_BONE = 'on the bone';

/** Null until four clicks are placed. */
export async function lookOnBone(film: OpenFilm, clicks: FourClicks): Promise<NamedLook | null> {
  const region = boneRegion(clicks, film.facts, ROOM_FOR_LEVELS);
  if (!region) return null;
  return { name: ON_BONE, look: { kind: 'window', window: await film.windowOn(region), voiFunction: 'LINEAR' } };
}

/** Limits of a margin's low end, as the evidence has them. */
import type { Verdict } from '@bonewright/construct';
import { value } from '@bonewright/evidence';

/** Under this something fails. */
export const FAILS = value('margin.stop');
/** Under this it is watched. */
export const WATCH = value('margin.watch');

export const marginVerdict = (p05: number): Verdict => (p05 < FAILS ? 'stop' : p05 < WATCH ? 'watch' : 'good');

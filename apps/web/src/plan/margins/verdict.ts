/** Limits of a margin's low end, as the evidence has them. */
import { value } from '@bonewright/evidence';

/** Under this something fails. */
export const FAILS = value('margin.stop');
/** Under this it is watched. */
export const WATCH = value('margin.watch');

/** Theatre with this package's own mechanics. */
import type { Case, Construct } from '../model/case-file.ts';
import { MECHANICS } from '../search/mechanics.ts';
import { type AsPlaced, asPlacedWith } from './as-placed.ts';
import type { InTheatre } from './placed.ts';

/** A construct as it stands half built, its remaining pins planned again round those that are in. */
export const asPlaced = (patientCase: Case, construct: Construct, theatre: InTheatre): AsPlaced =>
  asPlacedWith(MECHANICS, patientCase, construct, theatre);

export type { Advice, AsPlaced } from './as-placed.ts';
export { type Distance, type FoundAt, findPin } from './find-it.ts';
export { placedFromFilm, type SeenOnFilm } from './from-film.ts';
export { inPlanNumbers } from './numbers.ts';
export { type InTheatre, isAsPlanned, type Landmark, type PlacedPin, placeFrom } from './placed.ts';

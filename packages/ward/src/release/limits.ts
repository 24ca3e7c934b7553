/** Limits that published sources set for release. Where they disagree both stand, and the practice chooses one for the patient. */
import { type Entry, entry } from '@bonewright/evidence';
import { speciesName } from '../doses/patient-kind.ts';

export interface ReleaseLimit {
  readonly subject: 'mass' | 'night';
  readonly asks: string;
  readonly sources: readonly Entry[];
}

const OF_HEDGEHOGS: readonly ReleaseLimit[] = [
  {
    subject: 'mass',
    asks: 'Which mass do we go by?',
    sources: [entry('release.hedgehog.mass.joint-advice'), entry('release.hedgehog.mass.winter')],
  },
  {
    subject: 'night',
    asks: 'Above which night temperature?',
    sources: [entry('release.night.winter-study'), entry('release.night.station')],
  },
];

/** The limits for that species; none where none were found, and then nobody says what is enough but whoever looks. */
export const releaseLimits = (species: string): readonly ReleaseLimit[] =>
  speciesName(species) === 'hedgehog' ? OF_HEDGEHOGS : [];

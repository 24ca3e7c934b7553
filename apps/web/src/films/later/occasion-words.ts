/** Occasions of a film as the ward says them, and which one a film that comes in now is of. */
import { type CaseState, type FilmSet, type Occasion, stageOf } from '@bonewright/casebook';

export const OCCASION_CHOICES = [
  ['before', 'before'],
  ['in theatre', 'in theatre'],
  ['after', 'after'],
  ['recheck', 'recheck'],
  ['after removal', 'frame off'],
] as const satisfies readonly (readonly [Occasion, string])[];

const NAMES: Readonly<Record<Occasion, string>> = {
  before: 'Before',
  'in theatre': 'In theatre',
  after: 'After the operation',
  recheck: 'Recheck',
  'after removal': 'After removal',
};

/** `Recheck, day 20`. */
export function setName({ occasion, day }: Pick<FilmSet, 'occasion' | 'day'>): string {
  return day === null ? NAMES[occasion] : `${NAMES[occasion]}, day ${day}`;
}

/** Of a film that is taken in among the later ones now. */
export function occasionNow(state: CaseState): Occasion {
  const stage = stageOf(state);
  if (stage === 'release') return 'after removal';
  if (stage === 'rechecks') return 'recheck';
  const isClosed = state.theatre.putty?.hard != null;
  return stage === 'recovery' || isClosed ? 'after' : 'in theatre';
}

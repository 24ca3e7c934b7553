/** What is asked once a frame came off, before anybody speaks of release. */
import type { ReadyItem } from './readiness.ts';

const SERIES = 'Veterinary Medicine, postoperative management of external fixators in dogs and cats, part 5';

export const AFTER_FRAME: readonly ReadyItem[] = [
  {
    id: 'film-after-removal',
    asks: 'Film after removal, both views',
    why: 'Metal hid the bone until now.',
    source: SERIES,
    status: 'seen',
  },
  {
    id: 'pain-relief-that-evening',
    asks: 'Pain relief seen to for that evening and the days after',
    why: 'The skin of the bone hurts when pins come out. The vet chooses what and how long.',
    source: SERIES,
    status: 'seen',
  },
  {
    id: 'confined-with-exercises',
    asks: 'Confined for a week or more, with exercises that grow',
    why: 'The bone takes the whole load for the first time; how long is a judgement, nobody has measured it.',
    source: 'from memory, a judgement',
    status: 'memory',
  },
];

/** What can be done instead of an operation, each with what it asks for. No order, no verdict. */
import { isBird, speciesName } from '../doses/patient-kind.ts';

export interface Alternative {
  /** As the decision is recorded. */
  readonly course: 'operate' | 'splint' | 'rest' | 'pin alone' | 'amputation' | 'put to sleep' | 'wait';
  readonly asks: string;
  /** What is known about it, with where from; empty where nothing was read. */
  readonly known: readonly string[];
}

const COMMON: readonly Alternative[] = [
  {
    course: 'operate',
    asks: 'A bone that can be measured, pins that fit, weeks of care, somebody who looks at pin sites every day.',
    known: [],
  },
  {
    course: 'pin alone',
    asks: 'Holds bending, not twisting or sliding: the ends have to lock into each other.',
    known: [],
  },
  {
    course: 'splint',
    asks: 'Joints above and below held; changed and looked at often; chewed off by many.',
    known: [],
  },
  { course: 'rest', asks: 'A small cage, and ends that stay where they are.', known: [] },
  { course: 'amputation', asks: 'A life on three limbs that this species can live in the wild.', known: [] },
  {
    course: 'put to sleep',
    asks: 'No reasonable hope of release and of living on as others of its kind do.',
    known: ['The test that wildlife rehabilitators set themselves (British Wildlife Rehabilitation Council).'],
  },
  { course: 'wait', asks: 'Shock treated first; a day named on which it is decided.', known: [] },
];

const HEDGEHOG: Partial<Record<Alternative['course'], readonly string[]>> = {
  operate: [
    'Some authors say that only pins work because curling throws fixators and dressings off; others use external fixators (Twycross Zoo reference library). How will it curl?',
  ],
  amputation: [
    'No consensus and no trial: several rescues put a hedgehog to sleep that loses a foreleg; the hind leg is contested, it cannot scratch one side (pages of rescues).',
  ],
  'put to sleep': [
    'More than one major injury, pelvic injury above all in females, lasting blindness, no place to go (Foote 2022, Vet Nursing J 37, p. 31).',
  ],
};

const BIRD: Partial<Record<Alternative['course'], readonly string[]>> = {
  rest: ['Coracoid with cage rest: 75 % of all birds released, 97 % of raptors (Cracknell 2018, as quoted).'],
};

/** Every course that can be decided, with what is known for that species. */
export function alternativesFor(species: string): readonly Alternative[] {
  const own = speciesName(species) === 'hedgehog' ? HEDGEHOG : isBird(species) ? BIRD : {};
  return COMMON.map((one) => ({ ...one, known: [...one.known, ...(own[one.course] ?? [])] }));
}

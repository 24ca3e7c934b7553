import type { NewEvent } from './new-event.ts';

/** For tests: a hare's case is opened. */
export const HARE_OPENED = {
  kind: 'case-opened',
  payload: {
    number: '26-001',
    species: 'hare',
    name: '',
    massG: 1400,
    weighedAt: null,
    ageClass: 'adult',
    sex: 'unknown',
    bone: 'tibia',
    side: 'left',
  },
} as const satisfies NewEvent;

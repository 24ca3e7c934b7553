/** A made-up squirrel tibia for the tests beside the planner's code. */
import { type Case, type Construct, caseFileSchema } from '@bonewright/construct';
import { START_DRAWER } from './drawer/start-set.ts';

const station = (sMm: number, outerMm: [number, number], canalMm: [number, number]) => ({ sMm, outerMm, canalMm });

export const testCase: Case = caseFileSchema.parse({
  patient: { species: 'red squirrel', massG: 310, ageClass: 'adult' },
  bone: {
    name: 'tibia',
    side: 'left',
    lengthMm: 52,
    stations: [
      station(0, [6.8, 5.9], [5, 4.1]),
      station(10, [4.6, 4], [2.8, 2.3]),
      station(25, [3.6, 3.2], [2.2, 1.7]),
      station(52, [5.6, 4.6], [4, 3]),
    ],
  },
  fracture: { fromMm: 24, toMm: 26.5, gapMm: 0.8, obliquityDeg: 20 },
  keepOut: { proximalMm: 5, distalMm: 6 },
  softTissueMm: [
    { sMm: 0, depthMm: 5 },
    { sMm: 52, depthMm: 2 },
  ],
  drawer: START_DRAWER,
});

export const testConstruct: Construct = {
  im: { drawerId: 'IM 0.6', tiedIn: true },
  pins: [8, 20, 31, 43].map((sMm) => ({ drawerId: 'wire 0.8', sMm, tiltDeg: 0, aboutDeg: 0 })),
  column: { drawerId: 'putty 6', clearanceMm: 4 },
  grip: 'usual',
};

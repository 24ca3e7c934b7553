/** Where the canal was not measured the wall at a hole is taken from neighbours or from a usual bone. */
import { sectionAt, wallAt } from '@bonewright/bone';
import type { StationInput } from '../model/case-file.ts';
import type { Check } from '../model/plan.ts';
import type { CheckContext } from './context.ts';
import { judged, unmeasured } from './limits.ts';
import { inMm, pinName } from './words.ts';

const NO_LIMITS = { worse: 'below', watch: null, stop: null } as const;

export function canalMeasured(context: CheckContext): Check[] {
  return context.pins.map(({ index, sMm, aboutDeg }) => {
    const name = pinName(index);
    if (!canalIsMeasuredAt(context, sMm)) {
      const because = `The wall at ${name} is not measured but assumed. Measure the canal there.`;
      return unmeasured('canal-measured', 'mm', 'watch', because, ['bone.bore-ratio.assumed-sd'], index + 1);
    }
    const { wallMm } = wallAt(sectionAt(context.profile, sMm), aboutDeg);
    return judged({
      id: 'canal-measured',
      pin: index + 1,
      value: wallMm,
      unit: 'mm',
      limits: NO_LIMITS,
      shown: inMm,
      says: `The wall at ${name} is ${inMm(wallMm)}, measured`,
      evidence: [],
    });
  });
}

/** Both stations beside the place have a canal. */
export function canalIsMeasuredAt({ case: { bone } }: CheckContext, sMm: number): boolean {
  const has = (station: StationInput | undefined) => station === undefined || station.canalMm !== null;
  const after = bone.stations.find((station) => station.sMm >= sMm);
  const before = bone.stations.findLast((station) => station.sMm <= sMm);
  return has(after) && has(before);
}

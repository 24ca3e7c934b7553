/** What the patient carries: pins, IM pin and columns over its own mass. */
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import type { CheckContext } from './context.ts';
import { judged } from './limits.ts';
import { inFinePercent, inGrams } from './words.ts';

export function massCarried({ massG, boreClass, case: { patient } }: CheckContext): Check[] {
  const watchId = boreClass === 'bird' ? 'rule.mass-carried.watch-bird' : 'rule.mass-carried.watch';
  const percent = (100 * massG) / patient.massG;
  return [
    judged({
      id: 'mass-carried',
      value: percent,
      unit: '%',
      limits: { worse: 'above', watch: value(watchId), stop: value('rule.mass-carried.stop') },
      shown: inFinePercent,
      says: `The frame weighs ${inGrams(massG)}, ${inFinePercent(percent)} of the patient`,
      evidence: [watchId, 'rule.mass-carried.stop'],
    }),
  ];
}

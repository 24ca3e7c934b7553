/** Pin to the broken stretch, measured at the nearer of the two walls that the pin crosses. */
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import { type CheckContext, distanceTo } from './context.ts';
import { judged } from './limits.ts';
import { inMm, pinName } from './words.ts';

export function fractureDistance({ pins, case: { fracture } }: CheckContext): Check[] {
  return pins.map((pin) => {
    const distanceMm = distanceTo(pin, fracture.fromMm, fracture.toMm);
    const widths = distanceMm / pin.boneWidthMm;
    return judged({
      id: 'fracture-distance',
      pin: pin.index + 1,
      value: distanceMm,
      unit: 'mm',
      limits: {
        worse: 'below',
        watch: value('rule.fracture-distance.watch') * pin.boneWidthMm,
        stop: value('rule.fracture-distance.stop') * pin.boneWidthMm,
      },
      shown: inMm,
      says:
        distanceMm === 0
          ? `${pinName(pin.index)} lies in the fracture`
          : `${pinName(pin.index)} is ${inMm(distanceMm)} from the fracture, ${widths.toFixed(2)} of the bone's width`,
      evidence: ['rule.fracture-distance.watch', 'rule.fracture-distance.stop'],
    });
  });
}

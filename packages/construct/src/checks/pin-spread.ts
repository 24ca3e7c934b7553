/** Far, near, near, far: how much of a fragment's safe length its pins span. */
import type { FragmentName } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import { type CheckContext, FRAGMENTS, pinsOf } from './context.ts';
import { judged } from './limits.ts';
import { inPercent } from './words.ts';

export function pinSpread(context: CheckContext): Check[] {
  return FRAGMENTS.flatMap((fragment) => {
    const pins = pinsOf(context, fragment);
    if (pins.length < 2) return [];
    const spanMm = pins[pins.length - 1]!.sMm - pins[0]!.sMm;
    const safeMm = safeLength(context, fragment);
    const percent = safeMm > 0 ? Math.min(100, (100 * spanMm) / safeMm) : 100;
    return judged({
      id: `spread-${fragment}`,
      value: percent,
      unit: '%',
      limits: { worse: 'below', watch: value('rule.pin-spread.watch'), stop: null },
      shown: inPercent,
      says: `The ${fragment} pins span ${inPercent(percent)} of the ${safeMm.toFixed(0)} mm that are safe`,
      advice: 'One near the fracture and one near the joint hold best.',
      evidence: ['rule.pin-spread.watch'],
    });
  });
}

/** From the joint's limit to the fracture's, both half a bone's width where nothing else is marked. */
function safeLength({ case: { keepOut, bone, fracture }, pins }: CheckContext, fragment: FragmentName): number {
  const width = pins.reduce((sum, pin) => sum + pin.boneWidthMm, 0) / pins.length;
  const toFracture = value('rule.fracture-distance.stop') * width;
  const toJoint = value('rule.joint-distance.least') * width;
  if (fragment === 'proximal') return fracture.fromMm - toFracture - (keepOut?.proximalMm ?? toJoint);
  return bone.lengthMm - (keepOut?.distalMm ?? toJoint) - fracture.toMm - toFracture;
}

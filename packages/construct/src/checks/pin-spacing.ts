/** Pin to its neighbour in the same fragment: the bone left between two holes. */
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import { type CheckContext, type CheckedPin, FRAGMENTS, pinsOf } from './context.ts';
import { judged } from './limits.ts';
import { inMm, pinName } from './words.ts';

export function pinSpacing(context: CheckContext): Check[] {
  return FRAGMENTS.flatMap((fragment) => {
    const pins = pinsOf(context, fragment);
    return pins.slice(1).map((pin, i) => between(pins[i]!, pin));
  });
}

function between(a: CheckedPin, b: CheckedPin): Check {
  const spacingMm = leastSpacing(a, b);
  const wider = Math.max(a.boneWidthMm, b.boneWidthMm);
  const stop = (value('rule.pin-spacing.stop') * (a.drawer.diameterMm + b.drawer.diameterMm)) / 2;
  return judged({
    id: 'pin-spacing',
    pin: b.index + 1,
    value: spacingMm,
    unit: 'mm',
    limits: { worse: 'below', watch: Math.max(stop, value('rule.pin-spacing.watch') * wider), stop },
    shown: inMm,
    says: `${pinName(a.index)} and ${pinName(b.index)} are ${inMm(spacingMm)} apart`,
    evidence: ['rule.pin-spacing.watch', 'rule.pin-spacing.stop'],
  });
}

/** At the axis or at either wall, whichever is least: leaning pins may meet off the axis. */
function leastSpacing(a: CheckedPin, b: CheckedPin): number {
  const alongLean = (pin: CheckedPin) => (Math.sign(pin.tiltDeg) * (pin.crossesMm[1] - pin.crossesMm[0])) / 2;
  const apart = b.sMm - a.sMm;
  const outwards = alongLean(b) - alongLean(a);
  return Math.max(0, Math.min(apart, apart + outwards, apart - outwards));
}

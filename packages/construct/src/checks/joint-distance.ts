/** Pin to the joints at the bone's ends, or to the keep-out that was marked there. */
import { value } from '@bonewright/evidence';
import type { Case } from '../model/case-file.ts';
import type { Check } from '../model/plan.ts';
import type { CheckContext, CheckedPin } from './context.ts';
import { judged } from './limits.ts';
import { inMm, pinName } from './words.ts';

interface End {
  readonly name: string;
  /** Hole's edge to the joint line. */
  readonly distanceMm: number;
  readonly keepOutMm: number | null;
}

export function jointDistance({ pins, case: patientCase }: CheckContext): Check[] {
  return pins.map((pin) => {
    const end = nearerEnd(pin, patientCase);
    const { watch, stop } = limitsAt(pin, end);
    const keep = end.keepOutMm === null ? 'no keep-out is marked there' : `the keep-out is ${inMm(end.keepOutMm)}`;
    return judged({
      id: 'joint-distance',
      pin: pin.index + 1,
      value: end.distanceMm,
      unit: 'mm',
      limits: { worse: 'below', watch, stop },
      shown: inMm,
      says: `${pinName(pin.index)} is ${inMm(end.distanceMm)} from the ${end.name} joint; ${keep}`,
      evidence: ['rule.joint-distance.least', 'rule.joint-distance.unmarked'],
    });
  });
}

/** The end with the least room beyond its limit. */
function nearerEnd(pin: CheckedPin, { bone, keepOut }: Case): End {
  const radius = pin.drawer.diameterMm / 2;
  const [low, high] = pin.crossesMm;
  const ends: End[] = [
    { name: 'proximal', distanceMm: low - radius, keepOutMm: keepOut?.proximalMm ?? null },
    { name: 'distal', distanceMm: bone.lengthMm - high - radius, keepOutMm: keepOut?.distalMm ?? null },
  ];
  const room = (end: End) => end.distanceMm - limitsAt(pin, end).stop;
  return ends.reduce((a, b) => (room(b) < room(a) ? b : a));
}

/** A marked keep-out is the surgeon's own limit; without one half the bone's width takes its place. */
function limitsAt({ boneWidthMm }: CheckedPin, { keepOutMm }: End): { watch: number; stop: number } {
  const least = value('rule.joint-distance.least') * boneWidthMm;
  if (keepOutMm === null) return { watch: value('rule.joint-distance.unmarked') * boneWidthMm, stop: least };
  return { watch: Math.max(keepOutMm, least), stop: keepOutMm };
}

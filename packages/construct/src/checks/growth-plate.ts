/** In a growing patient the plates must be marked as keep-outs before anything is offered. */
import { value } from '@bonewright/evidence';
import { isGrowing } from '../loads/species.ts';
import type { Check } from '../model/plan.ts';
import type { CheckContext } from './context.ts';
import { judged, unmeasured } from './limits.ts';
import { inMm } from './words.ts';

const EVIDENCE = ['rule.growth-plate.distance'];

export function growthPlate({ pins, im, case: patientCase }: CheckContext): Check[] {
  const { keepOut, bone } = patientCase;
  if (!isGrowing(patientCase)) return [];
  if (!keepOut || keepOut.proximalMm === 0 || keepOut.distalMm === 0) {
    const because = 'The patient still grows and its growth plates are not marked. Mark a keep-out over each.';
    return [unmeasured('growth-plate', 'mm', 'stop', because, EVIDENCE)];
  }
  const distances = pins.map(({ crossesMm: [low, high], drawer }) => {
    const toPlate = Math.min(low - keepOut.proximalMm, bone.lengthMm - keepOut.distalMm - high);
    return toPlate - drawer.diameterMm / 2;
  });
  const closest = Math.min(...distances);
  const stop = value('rule.growth-plate.distance');
  const across = closest < stop ? 'A pin crosses or touches a growth plate' : 'No pin crosses a growth plate';
  const check = judged({
    id: 'growth-plate',
    value: closest,
    unit: 'mm',
    limits: { worse: 'below', watch: null, stop },
    shown: inMm,
    says: `${across}: the nearest leaves ${inMm(closest)} to the keep-out`,
    evidence: EVIDENCE,
  });
  return im && check.verdict === 'good' ? [check, crossed()] : [check];
}

function crossed(): Check {
  const because =
    'The IM pin crosses the growth plate where it enters. Only a thin, smooth, central one, out early, is borne.';
  return unmeasured('growth-plate-im', 'mm', 'watch', because, EVIDENCE);
}

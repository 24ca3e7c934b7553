/** Strain of the gap under the axial load with free ends, against what tissue bears. */
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import type { CheckContext } from './context.ts';
import { judged } from './limits.ts';
import { inPercent } from './words.ts';

const EVIDENCE = ['rule.gap-strain.bone', 'rule.gap-strain.watch', 'rule.gap-strain.none'];

export function gapStrain({ gapStrainPercent }: CheckContext): Check[] {
  if (gapStrainPercent === undefined || gapStrainPercent === null) return [];
  return [
    judged({
      id: 'gap-strain',
      value: gapStrainPercent,
      unit: '%',
      limits: { worse: 'above', watch: value('rule.gap-strain.watch'), stop: null },
      shown: inPercent,
      says: `The gap gives by ${inPercent(gapStrainPercent)} of its width, ${tissue(gapStrainPercent)}`,
      evidence: EVIDENCE,
    }),
  ];
}

function tissue(percent: number): string {
  if (percent <= value('rule.gap-strain.bone')) return 'which lets bone form';
  if (percent <= value('rule.gap-strain.watch')) return 'which lets cartilage bridge it';
  return percent <= value('rule.gap-strain.none') ? 'which only young tissue bears' : 'which no tissue bears';
}

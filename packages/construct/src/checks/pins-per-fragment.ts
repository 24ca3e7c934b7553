/** At least two pins in each fragment, three wanted where no IM pin shares the bending, more than four gain little. */
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import { type CheckContext, FRAGMENTS, pinsOf } from './context.ts';
import { judged } from './limits.ts';
import { capital, counted } from './words.ts';

export function pinsPerFragment(context: CheckContext): Check[] {
  return [...FRAGMENTS.map((fragment) => enough(context, fragment)), tooMany(context)];
}

function enough(context: CheckContext, fragment: (typeof FRAGMENTS)[number]): Check {
  const count = pinsOf(context, fragment).length;
  const least = value('rule.pins-per-fragment.least');
  const wanted = context.im ? least : value('rule.pins-per-fragment.target');
  return judged({
    id: `pins-${fragment}`,
    value: count,
    unit: 'pins',
    limits: { worse: 'below', watch: wanted, stop: least },
    shown: String,
    says: `${capital(counted(count, 'pin'))} in the ${fragment} fragment${context.im ? ', with an IM pin' : ''}`,
    evidence: ['rule.pins-per-fragment.least', 'rule.pins-per-fragment.target'],
  });
}

function tooMany(context: CheckContext): Check {
  const most = Math.max(...FRAGMENTS.map((fragment) => pinsOf(context, fragment).length));
  return judged({
    id: 'pins-most',
    value: most,
    unit: 'pins',
    limits: { worse: 'above', watch: value('rule.pins-per-fragment.most'), stop: null },
    shown: String,
    says: `${capital(counted(most, 'pin'))} in the fuller fragment`,
    advice: 'More gain little and cost holes.',
    evidence: ['rule.pins-per-fragment.most'],
  });
}

/** Beside the ruler: what would help most, what if, checks. */
import type { Plan } from '@bonewright/construct';
import { memo } from 'react';
import type { Improvement } from '../engine/answers.ts';
import type { LongAnswers } from '../engine/use-long-jobs.ts';
import { Checks, Help, WhatIfs } from './sections.tsx';
import { worstMargin } from './worst.ts';

interface ReasonsProps {
  readonly plan: Plan | null;
  readonly long: LongAnswers;
  readonly onApply: (improvement: Improvement) => void;
}

export const Reasons = memo(({ plan, long, onApply }: ReasonsProps) => {
  if (!plan) return null;
  return (
    <div className="planner-reasons">
      <Help improvements={long.improvements} now={worstMargin(plan).margin.p05} onApply={onApply} />
      <WhatIfs whatIfs={long.whatIfs} />
      <Checks plan={plan} />
    </div>
  );
});

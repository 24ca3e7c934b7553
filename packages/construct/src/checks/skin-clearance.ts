/** Skin to the column's near surface: room for swelling and for cleaning. */
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import type { CheckContext, CheckedColumn } from './context.ts';
import { judged } from './limits.ts';
import { inMm } from './words.ts';

const EVIDENCE = ['rule.skin-clearance.target', 'rule.skin-clearance.watch', 'rule.skin-clearance.stop'];

export function skinClearance({ columns, case: { softTissueMm } }: CheckContext): Check[] {
  const isDepthKnown = softTissueMm !== undefined && softTissueMm.length > 0;
  return columns.map((column) => clearanceOf(column, isDepthKnown));
}

function clearanceOf({ clearanceMm, side }: CheckedColumn, isDepthKnown: boolean): Check {
  const where = side === 'far' ? 'far column' : 'column';
  const check = judged({
    id: side === 'far' ? 'skin-clearance-far' : 'skin-clearance',
    value: clearanceMm,
    unit: 'mm',
    limits: { worse: 'below', watch: value('rule.skin-clearance.watch'), stop: value('rule.skin-clearance.stop') },
    shown: inMm,
    says: `The ${where} stands ${inMm(clearanceMm)} off the skin`,
    advice: 'Swelling will touch it.',
    evidence: EVIDENCE,
  });
  if (isDepthKnown || check.verdict === 'stop') return check;
  const because = `The ${where} stands ${inMm(clearanceMm)} off the bone: no depth of soft tissue is given. Measure it.`;
  return { ...check, verdict: 'watch', because };
}

/** Heat of a setting column at pins and tissue: acrylic by its distance, putty by how much sets in one go. */
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import type { CheckContext, CheckedColumn } from './context.ts';
import { judged } from './limits.ts';
import { inGrams, inMm } from './words.ts';

export function columnHeat({ columns }: CheckContext): Check[] {
  return columns.flatMap((column) => {
    const id = column.side === 'far' ? 'column-heat-far' : 'column-heat';
    if (/acrylic|cement|pmma/i.test(column.drawer.material)) return [acrylic(id, column)];
    return /putty|epoxy/i.test(column.drawer.material) ? [putty(id, column)] : [];
  });
}

function acrylic(id: string, { clearanceMm }: CheckedColumn): Check {
  return judged({
    id,
    value: clearanceMm,
    unit: 'mm',
    limits: { worse: 'below', watch: value('rule.heat.acrylic-distance'), stop: null },
    shown: inMm,
    says: `Acrylic sets hot, ${inMm(clearanceMm)} from the skin`,
    advice: 'Drip cool saline on the pins while it sets.',
    evidence: ['rule.heat.acrylic-distance', 'rule.heat.bone'],
  });
}

function putty(id: string, { massG }: CheckedColumn): Check {
  return judged({
    id,
    value: massG,
    unit: 'g',
    limits: { worse: 'above', watch: value('rule.heat.putty-mass'), stop: null },
    shown: inGrams,
    says: `${inGrams(massG)} of putty set at once`,
    advice: 'Mould it in two layers.',
    evidence: ['rule.heat.putty-mass', 'rule.heat.bone'],
  });
}

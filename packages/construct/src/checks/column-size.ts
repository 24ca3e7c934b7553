/** Column against bone: an acrylic column as wide as the bone outlasts it; other materials by equal bending stiffness. */
import { sectionAt } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import type { CheckContext } from './context.ts';
import { judged } from './limits.ts';
import { inMm } from './words.ts';

export function columnSize({ columns, profile, fragments }: CheckContext): Check[] {
  const [medial, cranial] = sectionAt(profile, fragments.middleMm).outerMm;
  const boneMm = (medial + cranial) / 2;
  return columns.map(({ drawer, side, youngMPa }) => {
    const stiffer = (youngMPa / value('rule.column-size.modulus')) ** (1 / 4);
    const share = (drawer.diameterMm * stiffer) / boneMm;
    return judged({
      id: side === 'far' ? 'column-size-far' : 'column-size',
      value: share,
      unit: 'bone widths',
      limits: { worse: 'below', watch: value('rule.column-size.watch'), stop: value('rule.column-size.stop') },
      shown: (widths) => widths.toFixed(2),
      says: `The ${inMm(drawer.diameterMm)} column counts as ${share.toFixed(2)} widths of the bone in acrylic`,
      evidence: ['rule.column-size.watch', 'rule.column-size.stop', 'rule.column-size.modulus'],
    });
  });
}

/** What is known to go wrong with this drug in this patient. */
import { drugOf } from '@bonewright/evidence';
import type { DoseLine } from '../dose-line.ts';
import { speciesName } from '../patient-kind.ts';
import { asks, type Remark, says } from '../remark.ts';

export function cautionRemarks({ drug, species, route }: Pick<DoseLine, 'drug' | 'species' | 'route'>): Remark[] {
  const cautions = drugOf(drug)?.cautions ?? [];
  return cautions
    .filter(({ own, routes }) => (own?.includes(speciesName(species)) ?? true) && (routes?.includes(route) ?? true))
    .map(({ words, status, isStop }, i) => {
      const said = status === 'memory' ? `${words} (From memory.)` : words;
      return (isStop ? asks : says)(`caution-${i + 1}`, said);
    });
}

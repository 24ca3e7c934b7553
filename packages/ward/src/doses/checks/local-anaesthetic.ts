/** Local anaesthetics over all sites and drugs: the share of each drug's own ceiling, added up. */
import { drugOf, entry, value } from '@bonewright/evidence';
import { hoursBetween } from '../../moments/moment.ts';
import type { DoseLine } from '../dose-line.ts';
import type { DoseContext, EarlierDose } from '../given.ts';
import { asks, asksSecond, type Remark, says } from '../remark.ts';
import type { Worked } from '../work-out.ts';

const GRAMS_A_KILOGRAM = 1000;

export interface LocalTotal {
  /** Share of the ceiling used by each dose; the shares add across drugs and sites. */
  readonly parts: readonly { readonly drug: string; readonly site: string; readonly share: number }[];
  readonly share: number;
}

type LocalDose = Pick<EarlierDose, 'drug' | 'site' | 'amount'>;

/** The ceiling of the drug, mg/kg, the lower of those published; null for one that is no local anaesthetic known here. */
export function localCeiling(drug: string): number | null {
  if (drugOf(drug)?.family !== 'local anaesthetic') return null;
  return value(`dose.local.${drug}`);
}

/** Adds up what was put in and what is about to be. */
export function localTotal(doses: readonly LocalDose[], massG: number): LocalTotal {
  const parts = doses.flatMap(({ drug, site, amount }) => {
    const ceiling = localCeiling(drug);
    if (ceiling === null) return [];
    return [{ drug, site, share: amount / (massG / GRAMS_A_KILOGRAM) / ceiling }];
  });
  return { parts, share: parts.reduce((sum, { share }) => sum + share, 0) };
}

/** Doses of local anaesthetics that still count: waiting, or given within the window. */
export const localEarlier = ({ earlier, now }: Pick<DoseContext, 'earlier' | 'now'>): readonly EarlierDose[] =>
  earlier.filter(
    ({ drug, givenAt }) =>
      localCeiling(drug) !== null && (givenAt === null || hoursBetween(givenAt, now) <= value('dose.local.window')),
  );

const ABOUT = 1e-9;

export function localRemarks(line: DoseLine, worked: Worked, context: DoseContext): Remark[] {
  if (drugOf(line.drug)?.family !== 'local anaesthetic') {
    if (line.use !== 'local anaesthetic') return [];
    return [asks('local-no-ceiling', `No ceiling of ${line.drug} is kept here: it cannot be added to the others.`)];
  }
  const doses = [...localEarlier(context), { ...line, amount: worked.drawnAmount }];
  const { share, parts } = localTotal(doses, line.massG);
  const percent = Math.round(share * 100);
  const ceiling = entry(`dose.local.${line.drug}`);
  const words = `Local anaesthetics together: ${percent} % of the ceiling over ${parts.length === 1 ? 'one site' : `${parts.length} doses`} (${line.drug} ${ceiling.value} mg/kg, ${ceiling.appliesTo}).`;
  if (share > 1 + ABOUT) return [asksSecond('local-ceiling', words)];
  return [says('local-total', words)];
}

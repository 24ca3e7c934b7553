/** The strength as typed, against those the drug is known to be sold in. The vial decides. */
import { drugOf, value } from '@bonewright/evidence';
import { strengthPerMl } from '../amount.ts';
import type { DoseLine } from '../dose-line.ts';
import { plain } from '../figure-words.ts';
import { asks, type Remark, says } from '../remark.ts';

const SAME = 0.01;
const READ_THE_VIAL = 'Read the vial aloud and say who read it.';

export function strengthRemarks({ drug, strength }: Pick<DoseLine, 'drug' | 'strength'>): Remark[] {
  const known = drugOf(drug);
  const perMl = strengthPerMl(strength);
  const strengths = known?.strengths.map((s) => s.perMl) ?? [];
  if (strengths.length === 0)
    return [
      asks('strength-not-known', `No strength of ${drug} is kept here to hold this one against. ${READ_THE_VIAL}`),
    ];
  const list = `${strengths.map(plain).join(', ')} ${known?.unit ?? 'mg'}/ml`;
  const others = strengths.filter((s) => !isSame(s, perMl));
  if (others.length === strengths.length) return [asks('strength-other', oddWords(perMl, strengths, list))];
  if (others.some((s) => isTimes(s, perMl, value('dose.slip'))))
    return [asks('strength-tenfold', `${drug} comes in strengths ten times apart (${list}). ${READ_THE_VIAL}`)];
  if (others.length > 0)
    return [says('strength-several', `${drug} also comes in other strengths (${list}): read the vial.`)];
  return [];
}

const isSame = (a: number, b: number): boolean => Math.abs(a / b - 1) <= SAME;
const isTimes = (a: number, b: number, times: number): boolean => Math.max(a / b, b / a) >= times * (1 - SAME);

function oddWords(perMl: number, strengths: readonly number[], list: string): string {
  const isFar = strengths.every((s) => isTimes(s, perMl, value('dose.unit-slip')));
  const unit = isFar ? ' Micrograms or milligrams?' : '';
  return `${plain(perMl)} a ml is none of the strengths known here (${list}, from memory unless seen).${unit} ${READ_THE_VIAL}`;
}

/** The discrete choices that a drawer leaves: IM pin, pin sizes, how many in each fragment, column. */
import { isthmus, type Profile } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { Case, Construct } from '../model/case-file.ts';

export type ImChoice = NonNullable<Construct['im']> | null;

/** None, and tied in each IM pin that fills enough of the narrowest canal to be worth its hole. */
export function imChoices({ drawer, keepOut, bone }: Case, profile: Profile): ImChoice[] {
  const narrowest = isthmus(profile, keepOut?.proximalMm ?? 0, bone.lengthMm - (keepOut?.distalMm ?? 0)).canalMm;
  const least = (narrowest * value('rule.im-fill.tried-from')) / 100;
  const worthIt = drawer.imPins.filter(({ count, diameterMm }) => count > 0 && diameterMm >= least);
  return [null, ...worthIt.map(({ id }) => ({ drawerId: id, tiedIn: true }))];
}

export interface PinChoice {
  readonly proximalId: string;
  readonly distalId: string;
}

/**
 * One size for the whole frame; two sizes only where the drawer is too short of one of them: nobody mixes wires
 * without need.
 */
export function pinChoices({ drawer }: Case): PinChoice[] {
  const least = value('rule.pins-per-fragment.least');
  const alone = drawer.pins.filter(({ count }) => count >= 2 * least);
  const same = alone.map(({ id }) => ({ proximalId: id, distalId: id }));
  const some = drawer.pins.filter(({ count }) => count >= least);
  const isShort = (count: number) => count < 2 * least;
  const mixed = some.flatMap((a) =>
    some
      .filter((b) => b.id !== a.id && (isShort(a.count) || isShort(b.count)))
      .map((b) => ({ proximalId: a.id, distalId: b.id })),
  );
  return [...same, ...mixed];
}

export interface Counts {
  readonly proximal: number;
  readonly distal: number;
}

/** From the least to the most useful number in each fragment, then the pairs that differ by one. */
export function countChoices(): { readonly alike: readonly Counts[]; readonly unlike: readonly Counts[] } {
  const least = value('rule.pins-per-fragment.least');
  const most = value('rule.pins-per-fragment.most');
  const each = Array.from({ length: most - least + 1 }, (_, i) => least + i);
  const alike = each.map((count) => ({ proximal: count, distal: count }));
  const unlike = each.slice(1).flatMap((count) => [
    { proximal: count - 1, distal: count },
    { proximal: count, distal: count - 1 },
  ]);
  return { alike, unlike };
}

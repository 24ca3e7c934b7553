/** What is low, past its day or does not tally in the drawer, a sentence each. */
import type { Stock, StockItem } from '../kinds/stock.ts';
import { isExpired, usable } from './drawer-of.ts';

export interface StockWarning {
  /** `stop` where nothing can be taken or the figure cannot be right. */
  readonly verdict: 'watch' | 'stop';
  readonly words: string;
}

/** What to see to, the thing first; empty where all is well. Days are written 2026-11-25. */
export function stockWarnings({ items }: Stock, today: string): StockWarning[] {
  return items.flatMap((item) => itemWarnings(item, today));
}

/** The same for one thing. */
export function itemWarnings(item: StockItem, today: string): StockWarning[] {
  if (item.thing.use === 'column') return [];
  const unit = item.thing.use === 'putty' ? ' g' : '';
  const name = item.id;
  const warnings: StockWarning[] = [];
  const say = (verdict: StockWarning['verdict'], words: string) => warnings.push({ verdict, words });
  const left = usable(item, today);
  if (left === 0) say('stop', `${name}: none left that may be used.`);
  else if (item.lowAt !== null && left <= item.lowAt) say('watch', `${name}: low, ${round(left)}${unit} left.`);
  for (const lot of item.lots) {
    const batch = lot.batch === '' ? '' : ` of batch ${lot.batch}`;
    if (lot.left > 0 && isExpired(lot, today))
      say('stop', `${name}: ${round(lot.left)}${unit}${batch} past its day, ${lot.expires}; it is not counted on.`);
    if (lot.left < 0)
      say('stop', `${name}: ${round(-lot.left)}${unit}${batch} more used than was counted in; count it again.`);
    if (lot.isCrossed) say('stop', `${name}${batch}: changed at two places at once, both taken; count it again.`);
  }
  return warnings;
}

/** Grams to a tenth. */
const round = (amount: number): number => Math.round(amount * 10) / 10;

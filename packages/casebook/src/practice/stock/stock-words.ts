/** What is low, past its day or does not tally in the drawer, a sentence each. */
import type { Stock, StockItem } from '../kinds/stock.ts';
import { isExpired, usable } from './drawer-of.ts';

/** What to see to, the thing first; empty where all is well. Days are written 2026-11-25. */
export function stockWarnings({ items }: Stock, today: string): string[] {
  return items.flatMap((item) => itemWarnings(item, today));
}

/** The same for one thing. */
export function itemWarnings(item: StockItem, today: string): string[] {
  if (item.thing.use === 'column') return [];
  const unit = item.thing.use === 'putty' ? ' g' : '';
  const name = item.id;
  const words: string[] = [];
  const left = usable(item, today);
  if (left === 0) words.push(`${name}: none left that may be used.`);
  else if (item.lowAt !== null && left <= item.lowAt) words.push(`${name}: low, ${round(left)}${unit} left.`);
  for (const lot of item.lots) {
    const batch = lot.batch === '' ? '' : ` of batch ${lot.batch}`;
    if (lot.left > 0 && isExpired(lot, today))
      words.push(`${name}: ${round(lot.left)}${unit}${batch} past its day, ${lot.expires}; it is not counted on.`);
    if (lot.left < 0)
      words.push(`${name}: ${round(-lot.left)}${unit}${batch} more used than was counted in; count it again.`);
  }
  return words;
}

/** Grams to a tenth. */
const round = (amount: number): number => Math.round(amount * 10) / 10;

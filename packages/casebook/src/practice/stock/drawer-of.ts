/** The drawer that a plan is made from, as the practice's stock stands. Days are written 2026-11-25. */
import { type Drawer, type DrawerColumn, drawerSchema } from '@bonewright/construct';
import type { Signed } from '../../case-state.ts';
import type { PuttyTest, Stock, StockItem, StockLot } from '../kinds/stock.ts';

/** Whether its last day is over. */
export const isExpired = ({ expires }: StockLot, today: string): boolean => expires !== null && expires < today;

/** How much may still be used, over all lots that are not expired. */
export function usable({ lots }: StockItem, today: string): number {
  return lots.reduce((sum, lot) => (isExpired(lot, today) ? sum : sum + Math.max(0, lot.left)), 0);
}

/** The lot to take from next: of those not expired with something left, the one that expires first. Null where none is left. */
export function nextLot({ lots }: StockItem, today: string): StockLot | null {
  const open = lots.filter((lot) => lot.left > 0 && !isExpired(lot, today));
  return open.reduce<StockLot | null>((best, lot) => (best && !isSooner(lot, best) ? best : lot), null);
}

const isSooner = (a: StockLot, b: StockLot): boolean =>
  a.expires !== null && (b.expires === null || a.expires < b.expires);

/** The bench test that stands for columns of that material: of the putty to be mixed next. Null where that was not tested. */
export function testInUse(stock: Stock, material: string, today: string): Signed<PuttyTest> | null {
  const putty = stock.items.find(({ thing }) => thing.use === 'putty' && thing.material === material);
  return (putty && nextLot(putty, today)?.test) ?? null;
}

/** Pins that are expired are not counted; a column carries the figures of its putty's bench test. */
export function drawerOf(stock: Stock, today: string): Drawer {
  const pins: unknown[] = [];
  const imPins: unknown[] = [];
  const columns: unknown[] = [];
  for (const item of stock.items) {
    const { id, thing } = item;
    const { use, ...row } = thing;
    if (use === 'pin') pins.push({ id, ...row, count: Math.floor(usable(item, today)) });
    if (use === 'im-pin') imPins.push({ id, ...row, count: Math.floor(usable(item, today)) });
    if (use === 'column') columns.push({ id, ...row, ...figuresOf(testInUse(stock, thing.material, today)) });
  }
  return drawerSchema.parse({ pins, imPins, columns });
}

type Figures = Pick<DrawerColumn, 'youngMPa' | 'youngSdMPa' | 'yieldMPa' | 'yieldSdMPa'>;

/** A bar that was not broken says nothing of the strength: the registry's figure stands. */
export function figuresOf(test: Signed<Pick<PuttyTest, 'youngMPa' | 'yieldMPa'>> | null): Figures {
  if (!test) return {};
  const { youngMPa, yieldMPa } = test.value;
  return {
    youngMPa: youngMPa.value,
    youngSdMPa: youngMPa.sd,
    ...(yieldMPa && { yieldMPa: yieldMPa.value, yieldSdMPa: yieldMPa.sd }),
  };
}

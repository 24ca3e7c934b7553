/** What a case has taken from the drawer, and what of it the practice's record does not say yet. */
import { constructSchema } from '@bonewright/construct';
import type { CaseState } from '../../case-state.ts';
import type { Stock, StockItem, StockUse } from '../kinds/stock.ts';
import { nextLot } from './drawer-of.ts';

const PUTTY = 'putty';

type Taken = Pick<StockUse, 'itemId' | 'as' | 'amount'>;

/**
 * Uses to record so that the stock agrees with what the case says was placed and mixed; also amounts of 0, for what was
 * taken back. Recording them leaves nothing to record. Things that the drawer does not know are passed over.
 */
export function usesToRecord(state: CaseState, stock: Stock, today: string): StockUse[] {
  const { caseId } = state;
  const taken = takenBy(state, stock);
  const known = stock.uses.map(({ value }) => value).filter(({ forCase }) => forCase === caseId);
  // Putty once mixed is gone; pins go back into the drawer.
  const gone = known
    .filter(({ as }) => !as.startsWith(PUTTY) && !taken.some((each) => each.as === as))
    .map((use) => ({ ...use, amount: 0 }));
  const fresh = taken.flatMap((each): StockUse[] => {
    const before = known.find(({ as }) => as === each.as);
    if (before && before.itemId === each.itemId && before.amount === each.amount) return [];
    const item = stock.items.find(({ id }) => id === each.itemId);
    if (!item) return [];
    const isSame = before?.itemId === each.itemId;
    return [{ ...each, batch: isSame ? before.batch : batchFor(item, today), forCase: caseId }];
  });
  return [...gone.filter(({ itemId }) => stock.items.some(({ id }) => id === itemId)), ...fresh];
}

/** The lot that goes first; with none left that may be used, the last that came. */
const batchFor = (item: StockItem, today: string): string => (nextLot(item, today) ?? item.lots.at(-1))?.batch ?? '';

function takenBy({ construct, theatre }: CaseState, stock: Stock): Taken[] {
  if (!construct) return [];
  const { pins, im, column } = constructSchema.parse(construct.value.construct);
  const placed = theatre.pins.filter((pin) => pin.placed !== null);
  const taken = placed.flatMap(({ pin }): Taken[] => {
    const planned = pins[pin - 1];
    return planned ? [{ itemId: planned.drawerId, as: `P${pin}`, amount: 1 }] : [];
  });
  // The IM pin goes in before the pins of the frame.
  if (im && placed.length > 0) taken.push({ itemId: im.drawerId, as: 'IM pin', amount: 1 });
  const [first] = [column].flat();
  const putty = first && puttyOf(first.drawerId, stock);
  const mixed = theatre.putty?.mixed;
  if (putty && mixed) taken.push({ itemId: putty.id, as: `${PUTTY}, entry ${mixed.seq}`, amount: mixed.value.grams });
  return taken;
}

function puttyOf(columnId: string, { items }: Stock): StockItem | undefined {
  const column = items.find(({ id }) => id === columnId);
  const material = column?.thing.use === 'column' ? column.thing.material : null;
  return items.find(({ thing }) => thing.use === 'putty' && thing.material === material);
}

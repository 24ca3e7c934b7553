/** What a drawer that was kept says about the practice's stock: rows that are new, changed or gone, and counts that differ. */
import { nextLot, type Stock, type StockItem, type StockThing, usable } from '@bonewright/casebook';
import type { Drawer, DrawerColumn, DrawerImPin, DrawerPin } from '@bonewright/construct';
import type { NewPracticeEvent } from '../../sync/new-event.ts';

const WHY = 'counted when the drawer was kept';

/** Entries that bring the stock, as it stood when the drawer was opened, to this drawer; none where it agrees. Putty is not a row of the drawer and stays. */
export function stockEntries(drawer: Drawer, stock: Stock, today: string): NewPracticeEvent[] {
  const rows = [
    ...drawer.pins.map((pin) => ({ id: pin.id, count: pin.count, thing: pinThing(pin) })),
    ...drawer.imPins.map((pin) => ({ id: pin.id, count: pin.count, thing: imThing(pin) })),
    ...drawer.columns.map((column) => ({ id: column.id, count: null, thing: columnThing(column) })),
  ];
  const gone = stock.items.filter(({ id, thing }) => thing.use !== 'putty' && !rows.some((row) => row.id === id));
  return [
    ...gone.map(({ id }): NewPracticeEvent => ({ kind: 'stock-withdrawn', payload: { itemId: id } })),
    ...rows.flatMap(({ id, count, thing }) => {
      const item = stock.items.find((each) => each.id === id);
      return [...described(id, thing, item), ...(count === null ? [] : counted(id, count, item, today))];
    }),
  ];
}

function described(itemId: string, thing: StockThing, item: StockItem | undefined): NewPracticeEvent[] {
  if (item && sameText(item.thing) === sameText(thing)) return [];
  const kept = item?.isDemonstration ? ({ demonstration: true } as const) : {};
  return [{ kind: 'stock-described', payload: { itemId, thing, lowAt: item?.lowAt ?? null, ...kept } }];
}

/** More goes to the batch that is used next; fewer is taken from the batches in the order in which they are used. */
function counted(itemId: string, count: number, item: StockItem | undefined, today: string): NewPracticeEvent[] {
  if (!item || item.lots.length === 0)
    return count === 0
      ? []
      : [{ kind: 'stock-received', payload: { itemId, batch: '', amount: count, expires: null } }];
  let more = count - Math.floor(usable(item, today));
  if (more > 0) {
    const lot = nextLot(item, today);
    return [
      {
        kind: 'stock-counted',
        payload: { itemId, batch: lot?.batch ?? '', left: (lot?.left ?? 0) + more, insteadOf: lot?.left ?? 0 },
        why: WHY,
      },
    ];
  }
  const entries: NewPracticeEvent[] = [];
  let left = item;
  for (let lot = nextLot(left, today); lot && more < 0; lot = nextLot(left, today)) {
    const { batch } = lot;
    const rest = Math.max(0, lot.left + more);
    more += lot.left - rest;
    entries.push({ kind: 'stock-counted', payload: { itemId, batch, left: rest, insteadOf: lot.left }, why: WHY });
    left = { ...left, lots: left.lots.map((each) => (each.batch === batch ? { ...each, left: rest } : each)) };
    if (rest > 0) break;
  }
  return entries;
}

function pinThing({ diameterMm, kind, coreDiameterMm, gauge, material }: DrawerPin): StockThing {
  return {
    use: 'pin',
    diameterMm,
    kind,
    material,
    ...(coreDiameterMm !== undefined && { coreDiameterMm }),
    ...(gauge !== undefined && { gauge }),
  };
}

const imThing = ({ diameterMm, material }: DrawerImPin): StockThing => ({ use: 'im-pin', diameterMm, material });
const columnThing = ({ diameterMm, material }: DrawerColumn): StockThing => ({ use: 'column', diameterMm, material });

/** Equal for equal things, in whatever order their keys were written. */
export const sameText = (thing: StockThing): string =>
  JSON.stringify(Object.entries(thing).sort(([a], [b]) => a.localeCompare(b)));

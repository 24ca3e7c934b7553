/**
 * The drawer as the practice's stock: things, each in lots with batch and expiry. Pins are counted in pieces, putty in grams.
 * A column is a shape that putty is moulded to; it is not counted.
 */
import { drawerColumnSchema, drawerImPinSchema, drawerPinSchema } from '@bonewright/construct';
import { z } from 'zod';
import type { Signed } from '../../case-state.ts';
import { kindsIn } from '../../event-shape.ts';
import type { Frozen } from '../../frozen.ts';
import { idSchema, tested, timeSchema } from '../../payloads.ts';
import { signed } from '../../signed.ts';
import type { Refusal } from '../refusal.ts';
import { practiceKind } from './practice-kind.ts';

const shortText = z.string().max(200);
const amount = z.number().min(0);
const pieces = { id: true, count: true } as const;
const figures = { id: true, youngMPa: true, yieldMPa: true, youngSdMPa: true, yieldSdMPa: true } as const;

const thingSchema = z.discriminatedUnion('use', [
  z.strictObject({ use: z.literal('pin'), ...drawerPinSchema.omit(pieces).shape }),
  z.strictObject({ use: z.literal('im-pin'), ...drawerImPinSchema.omit(pieces).shape }),
  z.strictObject({ use: z.literal('column'), ...drawerColumnSchema.omit(figures).shape }),
  z.strictObject({ use: z.literal('putty'), material: z.string().min(1) }),
]);

/** The name by which plans find it in the drawer. */
const itemId = shortText.min(1);
/** One delivery of one thing; the batch is empty where none is known. */
const lot = { itemId, batch: shortText };

export const stockKinds = [
  practiceKind(
    'stock-described',
    z.strictObject({
      itemId,
      thing: thingSchema,
      /** Said to be low at this amount or less; null where nobody set it. */
      lowAt: amount.nullable(),
      demonstration: z.literal(true).exactOptional(),
    }),
  ),
  practiceKind('stock-withdrawn', z.strictObject({ itemId })),
  practiceKind(
    'stock-received',
    z.strictObject({ ...lot, amount, /** The last day on which it may be used. */ expires: z.iso.date().nullable() }),
  ),
  /** What is left was counted by hand: it takes the place of what was reckoned. */
  practiceKind(
    'stock-counted',
    z.strictObject({
      ...lot,
      left: amount,
      /** What stood on the page that was corrected: what others recorded meanwhile stays counted. */
      insteadOf: z.number().exactOptional(),
    }),
  ),
  /** The last day on the label, where it was first written wrongly. */
  practiceKind('stock-dated', z.strictObject({ ...lot, expires: z.iso.date().nullable() })),
  /** The same use again is a correction; an amount of 0 means that it was not used after all. */
  practiceKind(
    'stock-used',
    z.strictObject({
      ...lot,
      amount,
      forCase: idSchema,
      /** `P3`, `IM pin`, `putty, entry 41`: once a case. */ as: shortText.min(1),
    }),
  ),
  practiceKind(
    'putty-tested',
    z.strictObject({
      ...lot,
      youngMPa: tested,
      /** Bending strength; null where the bar was not broken. */
      yieldMPa: tested.nullable(),
      testedAt: timeSchema,
      note: shortText.exactOptional(),
    }),
  ),
] as const;

export type StockEvent = Frozen<z.output<(typeof stockKinds)[number]>>;
type StockPayload<K extends StockEvent['kind']> = Extract<StockEvent, { kind: K }>['payload'];
export type StockThing = StockPayload<'stock-described'>['thing'];
export type PuttyTest = Omit<StockPayload<'putty-tested'>, 'itemId' | 'batch'>;
export type StockUse = StockPayload<'stock-used'>;

export interface StockLot {
  readonly batch: string;
  readonly expires: string | null;
  /** Pieces or grams; below 0 where more was used than was ever counted in. */
  readonly left: number;
  /** The last count by hand; null where there was none. */
  readonly counted: Signed<number> | null;
  /** Somebody else changed it while it was being counted: both changes were taken together, nobody has counted since. */
  readonly isCrossed: boolean;
  /** The last bench test of it. */
  readonly test: Signed<PuttyTest> | null;
}

export interface StockItem {
  readonly id: string;
  readonly thing: StockThing;
  readonly lowAt: number | null;
  readonly isDemonstration: boolean;
  /** In the order in which they came. */
  readonly lots: readonly StockLot[];
}

export interface Stock {
  readonly items: readonly StockItem[];
  /** What went into which patient, and from which batch; also of things withdrawn since. */
  readonly uses: readonly Signed<StockUse>[];
}

/** Sums of grams differ by rounding only. */
const SAME_AMOUNT = 1e-6;

export const emptyStock: Stock = { items: [], uses: [] };

const KINDS = kindsIn(stockKinds);

export const isOfStock = (event: { readonly kind: string }): event is StockEvent => KINDS.has(event.kind);

/** The stock after that event, or why it says nothing. */
export function applyStock(stock: Stock, event: StockEvent): Stock | Refusal {
  if (event.kind === 'stock-described') return describe(stock, event.payload);
  const item = stock.items.find(({ id }) => id === event.payload.itemId);
  if (!item) return { because: `there is no ${event.payload.itemId} in the drawer` };
  switch (event.kind) {
    case 'stock-withdrawn':
      return { ...stock, items: stock.items.filter(({ id }) => id !== item.id) };
    case 'stock-received': {
      const { amount: more, expires } = event.payload;
      return withLot(stock, event.payload, (before) => ({
        ...before,
        left: before.left + more,
        expires: expires ?? before.expires,
      }));
    }
    case 'stock-counted': {
      const { left: seen, insteadOf } = event.payload;
      return withLot(stock, event.payload, (before) => {
        const meanwhile = insteadOf === undefined ? 0 : before.left - insteadOf;
        const left = seen + meanwhile;
        return { ...before, left, counted: signed(event, left), isCrossed: Math.abs(meanwhile) > SAME_AMOUNT };
      });
    }
    case 'stock-dated':
      return withLot(stock, event.payload, (before) => ({ ...before, expires: event.payload.expires }));
    case 'stock-used':
      return use(stock, signed(event, event.payload));
    case 'putty-tested': {
      if (item.thing.use !== 'putty') return { because: `${item.id} is not a putty` };
      const { itemId: _, batch: __, ...test } = event.payload;
      return withLot(stock, event.payload, (before) => ({ ...before, test: signed(event, test) }));
    }
  }
}

/** The stock without the things of the demonstration and what was used of them. */
export function withoutDemonstration({ items, uses }: Stock): Stock {
  const gone = new Set(items.filter(({ isDemonstration }) => isDemonstration).map(({ id }) => id));
  return { items: items.filter(({ id }) => !gone.has(id)), uses: uses.filter(({ value }) => !gone.has(value.itemId)) };
}

function describe(stock: Stock, payload: StockPayload<'stock-described'>): Stock | Refusal {
  const { itemId: id, thing, lowAt, demonstration = false } = payload;
  const before = stock.items.find((item) => item.id === id);
  if (before && before.thing.use !== thing.use) return { because: `${id} is the name of something else in the drawer` };
  const item = { id, thing, lowAt, isDemonstration: demonstration, lots: before?.lots ?? [] };
  return {
    ...stock,
    items: before ? stock.items.map((each) => (each.id === id ? item : each)) : [...stock.items, item],
  };
}

function use(stock: Stock, next: Signed<StockUse>): Stock {
  const { itemId, batch, amount: taken, forCase, as } = next.value;
  const before = stock.uses.find(({ value }) => value.forCase === forCase && value.as === as);
  const given = before
    ? withLot(stock, before.value, (was) => ({ ...was, left: was.left + before.value.amount }))
    : stock;
  const after = withLot(given, { itemId, batch }, (was) => ({ ...was, left: was.left - taken }));
  const others = stock.uses.filter((each) => each !== before);
  return { ...after, uses: taken === 0 ? others : [...others, next] };
}

interface LotName {
  readonly itemId: string;
  readonly batch: string;
}

function withLot(stock: Stock, { itemId, batch }: LotName, change: (lot: StockLot) => StockLot): Stock {
  const items = stock.items.map((item) => {
    if (item.id !== itemId) return item;
    if (item.lots.some((each) => each.batch === batch))
      return { ...item, lots: item.lots.map((each) => (each.batch === batch ? change(each) : each)) };
    return {
      ...item,
      lots: [...item.lots, change({ batch, expires: null, left: 0, counted: null, isCrossed: false, test: null })],
    };
  });
  return { ...stock, items };
}

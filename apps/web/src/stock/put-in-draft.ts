/** What is typed to put something into the stock, and the entries that it comes to. */
import type { Stock, StockThing } from '@bonewright/casebook';
import { entries as evidence } from '@bonewright/evidence';
import { readNumber } from '../form/read-number.ts';
import { sameText } from '../plan/drawer/keep-in-stock.ts';
import { MATERIAL_WORDS } from '../plan/drawer/materials.ts';
import { columnName, imName, pinName, unique } from '../plan/drawer/naming.ts';
import type { NewPracticeEvent } from '../sync/new-event.ts';

export const PUT_IN_USES = [
  'smooth',
  'threaded-end',
  'threaded-centre',
  'needle',
  'im-pin',
  'column',
  'putty',
] as const;
type PutInUse = (typeof PUT_IN_USES)[number];

export const USE_WORDS: Readonly<Record<PutInUse, string>> = {
  smooth: 'smooth pin',
  'threaded-end': 'pin, threaded end',
  'threaded-centre': 'pin, threaded centre',
  needle: 'needle',
  'im-pin': 'IM pin',
  column: 'column',
  putty: 'putty',
};

const EMPTY = { diameter: '', core: '', gauge: '', material: '', amount: '', batch: '', expires: '', lowAt: '' };

export type PutInDraft = Readonly<typeof EMPTY> & { readonly use: PutInUse | '' };

/** Reads what this device kept; anything unreadable counts as not typed. */
export function readPutIn(kept: unknown): PutInDraft {
  const typed: Readonly<Record<string, unknown>> = typeof kept === 'object' && kept !== null ? { ...kept } : {};
  const text = (key: string): string => {
    const value = typed[key];
    return typeof value === 'string' ? value : '';
  };
  return {
    use: PUT_IN_USES.find((use) => use === text('use')) ?? '',
    diameter: text('diameter'),
    core: text('core'),
    gauge: text('gauge'),
    material: text('material'),
    amount: text('amount'),
    batch: text('batch'),
    expires: text('expires'),
    lowAt: text('lowAt'),
  };
}

export type PutInOutcome =
  | { readonly itemId: string; readonly entries: readonly NewPracticeEvent[] }
  | { readonly refused: string };

/** More of a thing that is there goes to it; anything else is described first. Refused in words. */
export function putInEntries(draft: PutInDraft, stock: Stock): PutInOutcome {
  const thing = thingOf(draft);
  if (typeof thing === 'string') return { refused: thing };
  const amount = thing.use === 'column' ? null : readNumber(draft.amount);
  const isPiece = thing.use !== 'putty';
  if (thing.use !== 'column' && (amount === null || amount <= 0 || (isPiece && !Number.isInteger(amount))))
    return { refused: isPiece ? 'say how many pieces, a whole number above 0' : 'say how many grams, above 0' };
  const lowAt = readNumber(draft.lowAt);
  if (draft.lowAt.trim() !== '' && (lowAt === null || lowAt < 0))
    return { refused: 'the low mark has to be a number from 0 on' };
  const item = stock.items.find((each) => sameText(each.thing) === sameText(thing));
  if (item && amount === null) return { refused: `${item.id} is in the stock already` };
  const itemId = item?.id ?? unique(nameOf(thing), new Set(stock.items.map(({ id }) => id)));
  const entries: NewPracticeEvent[] = [];
  if (!item || (lowAt !== null && lowAt !== item.lowAt)) {
    const kept = item?.isDemonstration ? ({ demonstration: true } as const) : {};
    entries.push({ kind: 'stock-described', payload: { itemId, thing, lowAt: lowAt ?? null, ...kept } });
  }
  const lot = { itemId, batch: draft.batch.trim() };
  if (amount !== null)
    entries.push({ kind: 'stock-received', payload: { ...lot, amount, expires: draft.expires || null } });
  return { itemId, entries };
}

/** The thing, or what is missing to know it. */
function thingOf({ use, material, diameter, core, gauge }: PutInDraft): StockThing | string {
  if (use === '') return 'say what it is';
  if (material === '') return 'choose its material';
  if (use === 'putty') return { use, material };
  if (use === 'needle') return needle(readNumber(gauge), material);
  const diameterMm = readNumber(diameter);
  if (diameterMm === null || diameterMm <= 0) return 'the diameter has to be a number above 0';
  if (use === 'im-pin' || use === 'column') return { use, material, diameterMm };
  if (use === 'smooth') return { use: 'pin', kind: use, material, diameterMm };
  const coreDiameterMm = readNumber(core);
  if (coreDiameterMm === null || coreDiameterMm <= 0 || coreDiameterMm > diameterMm)
    return 'the core has to be above 0 and no thicker than the thread';
  return { use: 'pin', kind: use, material, diameterMm, coreDiameterMm };
}

function needle(gauge: number | null, material: string): StockThing | string {
  const outer = evidence.find(({ id }) => id === `needle.${gauge}.outer`);
  if (gauge === null || !outer) return 'this gauge of needle is not known here';
  return { use: 'pin', kind: 'needle', gauge, material, diameterMm: outer.value };
}

function nameOf(thing: StockThing): string {
  switch (thing.use) {
    case 'pin':
      return pinName(thing);
    case 'im-pin':
      return imName(thing);
    case 'column':
      return columnName(thing);
    case 'putty':
      return MATERIAL_WORDS[thing.material] ?? thing.material;
  }
}

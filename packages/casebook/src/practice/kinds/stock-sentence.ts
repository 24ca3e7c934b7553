import type { StockEvent, StockThing } from './stock.ts';

/** What happened in the drawer, in words. */
export function stockSentence({ kind, payload }: StockEvent): string {
  const batch = 'batch' in payload && payload.batch !== '' ? `, batch ${payload.batch}` : '';
  switch (kind) {
    case 'stock-described':
      return `${payload.itemId} in the drawer: ${thingWords(payload.thing)}.`;
    case 'stock-withdrawn':
      return `${payload.itemId} taken out of the drawer.`;
    case 'stock-received':
      return `${payload.itemId}${batch}: ${payload.amount} came in.`;
    case 'stock-counted':
      return `${payload.itemId}${batch}: counted, ${payload.left} left${
        payload.insteadOf === undefined ? '' : ` instead of ${payload.insteadOf}`
      }.`;
    case 'stock-dated':
      return `${payload.itemId}${batch}: ${payload.expires === null ? 'no last day known' : `good until ${payload.expires}`}.`;
    case 'stock-used':
      return payload.amount === 0
        ? `${payload.itemId}${batch}: given back, not used as ${payload.as}.`
        : `${payload.itemId}${batch}: ${payload.amount} used as ${payload.as}.`;
    case 'putty-tested':
      return `${payload.itemId}${batch}: bench test, modulus ${payload.youngMPa.value.toPrecision(3)} MPa${
        payload.yieldMPa ? `, strength ${payload.yieldMPa.value.toPrecision(3)} MPa` : ', not broken'
      }.`;
  }
}

function thingWords(thing: StockThing): string {
  switch (thing.use) {
    case 'pin':
      return `${thing.diameterMm} mm pin, ${thing.kind}`;
    case 'im-pin':
      return `${thing.diameterMm} mm IM pin`;
    case 'column':
      return `${thing.diameterMm} mm column of ${thing.material}`;
    case 'putty':
      return thing.material;
  }
}

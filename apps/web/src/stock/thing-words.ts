/** A thing of the stock, and an amount of it, in words. */
import type { StockThing } from '@bonewright/casebook';
import { MATERIAL_WORDS } from '../plan/drawer/materials.ts';
import { figure, KIND_WORDS } from '../plan/words.ts';

export function thingWords(thing: StockThing): string {
  const material = MATERIAL_WORDS[thing.material] ?? thing.material;
  switch (thing.use) {
    case 'pin': {
      const core = thing.coreDiameterMm === undefined ? '' : `, core ${figure(thing.coreDiameterMm, 2)} mm`;
      return `${figure(thing.diameterMm, 2)} mm ${KIND_WORDS[thing.kind]}${core}, ${material}`;
    }
    case 'im-pin':
      return `${figure(thing.diameterMm, 2)} mm IM pin, ${material}`;
    case 'column':
      return `${figure(thing.diameterMm)} mm column, ${material}`;
    case 'putty':
      return material;
  }
}

/** `4 pieces`, `240 g`. */
export function amountWords({ use }: StockThing, amount: number): string {
  if (use === 'putty') return `${Math.round(amount * 10) / 10} g`;
  return amount === 1 ? '1 piece' : `${amount} pieces`;
}

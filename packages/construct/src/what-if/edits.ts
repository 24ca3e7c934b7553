/** Changes of a construct, each from a whole one to a whole new one. Lengths in mm. */
import type { Construct } from '../model/case-file.ts';
import { columnsOf } from '../model/figures.ts';

type Pin = Construct['pins'][number];
type Column = ReturnType<typeof columnsOf>[number];

function withPin(construct: Construct, index: number, change: (pin: Pin) => Pin): Construct {
  return { ...construct, pins: construct.pins.map((pin, i) => (i === index ? change(pin) : pin)) };
}

export const withPinAt = (construct: Construct, index: number, sMm: number): Construct =>
  withPin(construct, index, (pin) => ({ ...pin, sMm }));

export const withPinSize = (construct: Construct, index: number, drawerId: string): Construct =>
  withPin(construct, index, (pin) => ({ ...pin, drawerId }));

export const withAllPins = (construct: Construct, drawerId: string): Construct => ({
  ...construct,
  pins: construct.pins.map((pin) => ({ ...pin, drawerId })),
});

/** One more pin like its nearest neighbour; pins are numbered from the proximal end. */
export function withPinAdded(construct: Construct, sMm: number): Construct {
  const like = construct.pins.reduce((a, b) => (Math.abs(b.sMm - sMm) < Math.abs(a.sMm - sMm) ? b : a));
  return { ...construct, pins: [...construct.pins, { ...like, sMm }].toSorted((a, b) => a.sMm - b.sMm) };
}

/** Columns keep their form: one stays one, a list stays a list. */
export function withColumns(construct: Construct, change: (column: Column) => Column): Construct {
  const columns = columnsOf(construct).map(change);
  return { ...construct, column: Array.isArray(construct.column) ? columns : columns[0]! };
}

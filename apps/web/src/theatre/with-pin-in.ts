/** The standing plan with one pin at one place, whether it is in it or was left out or is homeless. */
import type { AsPlaced, Construct, InTheatre } from '@bonewright/construct';

export interface WithPinIn {
  readonly construct: Construct;
  readonly numbers: readonly number[];
  /** Of the pin asked for. */
  readonly index: number;
  /** Indices of the other pins that stand. */
  readonly inAlready: readonly number[];
}

export function withPinIn(
  { construct, numbers }: Pick<AsPlaced, 'construct' | 'numbers'>,
  planned: Construct,
  { placed }: InTheatre,
  pin: number,
  sMm: number,
): WithPinIn {
  const known = numbers.includes(pin);
  const all = known ? numbers : [...numbers, pin].toSorted((a, b) => a - b);
  const pins = all.map((each) => {
    const i = numbers.indexOf(each);
    const at = i >= 0 ? construct.pins[i]! : planned.pins[each - 1]!;
    return each === pin ? { ...at, sMm } : at;
  });
  const stands = new Set(placed.map((each) => each.pin));
  return {
    construct: { ...construct, pins },
    numbers: all,
    index: all.indexOf(pin),
    inAlready: all.flatMap((each, i) => (each !== pin && stands.has(each) ? [i] : [])),
  };
}

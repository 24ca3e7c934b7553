/** From the range of an evidence entry to a factor on its value: log-normal, its middle the value itself. */
import { type Entry, entry } from '@bonewright/evidence';

/** Quantile of the normal distribution that leaves 2.5 % above. */
const Z_975 = 1.96;

/** How many standard deviations each side of the middle a stated spread reaches. A plain range is read as 95 %. */
const REACH: Readonly<Record<Entry['spread'], number>> = { '95 %': Z_975, range: Z_975, sd: 1, exact: 1 };

/** The entry's value over its middle when it is drawn `z` standard deviations off. */
export function factorOf(id: string, z: number): number {
  const { low, high, spread } = entry(id);
  return Math.exp((z * Math.log(high / low)) / (2 * REACH[spread]));
}

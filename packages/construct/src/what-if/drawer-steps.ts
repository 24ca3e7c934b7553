/** The next size up or down in the drawer. */
export interface Sized {
  readonly id: string;
  readonly diameterMm: number;
  readonly kind?: string;
  readonly count?: number;
}

/** The next thinner one in stock, of the same kind where there is one; undefined where none is thinner. */
export const nextSmaller = <T extends Sized>(list: readonly T[], from: T): T | undefined =>
  closest(list, from, (item) => from.diameterMm - item.diameterMm);

/** The next thicker one in stock, of the same kind where there is one; undefined where none is thicker. */
export const nextLarger = <T extends Sized>(list: readonly T[], from: T): T | undefined =>
  closest(list, from, (item) => item.diameterMm - from.diameterMm);

function closest<T extends Sized>(list: readonly T[], from: T, stepOf: (item: T) => number): T | undefined {
  const beyond = list.filter((item) => stepOf(item) > 0 && item.count !== 0);
  const alike = beyond.filter(({ kind }) => kind === from.kind);
  const open = alike.length > 0 ? alike : beyond;
  return open.toSorted((a, b) => stepOf(a) - stepOf(b))[0];
}

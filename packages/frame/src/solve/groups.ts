/** The unknowns in groups: of each body those that are treated alike, so that one elimination step can take them at once. */

/** When an unknown is eliminated. */
export const PLACE = {
  /** It is not an unknown. */
  none: 0,
  /** In its turn. */
  interior: 1,
  /** After the interior: moved by contacts and sleeves, but not what they measure. */
  hidden: 2,
  /** Not at all: what contacts and sleeves measure. */
  gap: 3,
  /** Not at all: held by some support sets only, or loaded. */
  late: 4,
} as const;

export interface Layout {
  /** One of PLACE for each slot: motion k of body b is slot 6 b + k. */
  readonly places: Uint8Array;
  /** Bodies that each element joins; -1 is the ground. */
  readonly elementFrom: Int32Array;
  readonly elementTo: Int32Array;
}

export interface Groups {
  readonly sizes: readonly number[];
  readonly places: readonly number[];
  readonly slots: readonly (readonly number[])[];
  /** Groups of each body. */
  readonly ofBody: readonly (readonly number[])[];
}

export function groupUnknowns({ places }: Layout): Groups {
  const slots: number[][] = [];
  const placeOf: number[] = [];
  const ofBody: number[][] = [];
  for (let body = 0; body < places.length / 6; body++) {
    const mine: number[] = [];
    for (const place of [PLACE.interior, PLACE.hidden, PLACE.gap, PLACE.late]) {
      const part = [0, 1, 2, 3, 4, 5].map((k) => body * 6 + k).filter((slot) => places[slot] === place);
      if (part.length === 0) continue;
      mine.push(slots.push(part) - 1);
      placeOf.push(place);
    }
    ofBody.push(mine);
  }
  return { sizes: slots.map((part) => part.length), places: placeOf, slots, ofBody };
}

/** For each element the groups it ties together. */
export function elementGroups({ elementFrom, elementTo }: Layout, { ofBody }: Groups): number[][] {
  return Array.from(elementFrom, (from, element) => {
    const to = elementTo[element]!;
    return [...(ofBody[from] ?? []), ...(to === from ? [] : (ofBody[to] ?? []))];
  });
}

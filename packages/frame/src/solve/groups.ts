/** The unknowns in groups: of each body those that can be eliminated at once, and those that stay to the end. */

export interface Layout {
  /** 1 where that motion of a body (6 a body) is an unknown. */
  readonly isUnknown: Uint8Array;
  /** 1 where that unknown stays to the end. */
  readonly isInterface: Uint8Array;
  /** Bodies that each element joins; -1 is the ground. */
  readonly elementFrom: Int32Array;
  readonly elementTo: Int32Array;
}

export interface Groups {
  readonly sizes: readonly number[];
  readonly isInterface: readonly boolean[];
  /** The slots (motion k of body b is slot 6 b + k) of each group. */
  readonly slots: readonly (readonly number[])[];
  /** Groups of each body. */
  readonly ofBody: readonly (readonly number[])[];
}

export function groupUnknowns({ isUnknown, isInterface }: Layout): Groups {
  const slots: number[][] = [];
  const kept: boolean[] = [];
  const ofBody: number[][] = [];
  for (let body = 0; body < isUnknown.length / 6; body++) {
    const free = [0, 1, 2, 3, 4, 5].map((k) => body * 6 + k).filter((slot) => isUnknown[slot] === 1);
    const mine: number[] = [];
    for (const stays of [0, 1]) {
      const part = free.filter((slot) => isInterface[slot] === stays);
      if (part.length === 0) continue;
      mine.push(slots.push(part) - 1);
      kept.push(stays === 1);
    }
    ofBody.push(mine);
  }
  return { sizes: slots.map((part) => part.length), isInterface: kept, slots, ofBody };
}

/** For each element the groups it ties together. */
export function elementGroups({ elementFrom, elementTo }: Layout, { ofBody }: Groups): number[][] {
  return Array.from(elementFrom, (from, element) => {
    const to = elementTo[element]!;
    return [...(ofBody[from] ?? []), ...(to === from ? [] : (ofBody[to] ?? []))];
  });
}

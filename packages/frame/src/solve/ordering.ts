/**
 * Elimination order of groups of unknowns by least degree: the group with the fewest unknowns tied to it goes first and
 * ties its neighbours to each other. On a frame, which is chains of beams, this condenses each chain away and keeps
 * the fill small. Interface groups stay to the end.
 */

export interface Elimination {
  /** Interior groups, first eliminated first. */
  readonly order: readonly number[];
  /** For each interior group the groups it is tied to when it goes. */
  readonly boundary: ReadonlyMap<number, readonly number[]>;
}

/**
 * @param sizes unknowns of each group
 * @param isInterface groups that are never eliminated
 * @param cliques groups that one element ties together
 */
export function eliminationOrder(
  sizes: readonly number[],
  isInterface: readonly boolean[],
  cliques: Iterable<readonly number[]>,
): Elimination {
  const neighbours = sizes.map(() => new Set<number>());
  for (const clique of cliques) tie(neighbours, clique);
  const degree = (group: number): number => {
    let sum = 0;
    for (const other of neighbours[group]!) sum += sizes[other]!;
    return sum;
  };
  const queue = new DegreeQueue();
  sizes.forEach((_, group) => {
    if (!isInterface[group]) queue.put(group, degree(group));
  });

  const order: number[] = [];
  const boundary = new Map<number, number[]>();
  for (let group = queue.take(); group !== undefined; group = queue.take()) {
    const tied = [...neighbours[group]!];
    order.push(group);
    boundary.set(group, tied);
    for (const other of tied) neighbours[other]!.delete(group);
    tie(neighbours, tied);
    for (const other of tied) if (!isInterface[other]) queue.put(other, degree(other));
  }
  return { order, boundary };
}

function tie(neighbours: readonly Set<number>[], clique: readonly number[]): void {
  for (const a of clique) {
    for (const b of clique) if (a !== b) neighbours[a]!.add(b);
  }
}

/** Groups by degree; the least degree comes out first, among equals the one that was put in first. */
class DegreeQueue {
  readonly #buckets: Set<number>[] = [];
  readonly #degreeOf = new Map<number, number>();

  put(group: number, degree: number): void {
    const before = this.#degreeOf.get(group);
    if (before === degree) return;
    if (before !== undefined) this.#buckets[before]!.delete(group);
    while (this.#buckets.length <= degree) this.#buckets.push(new Set());
    this.#buckets[degree]!.add(group);
    this.#degreeOf.set(group, degree);
  }

  take(): number | undefined {
    for (const bucket of this.#buckets) {
      for (const group of bucket) {
        bucket.delete(group);
        this.#degreeOf.delete(group);
        return group;
      }
    }
    return undefined;
  }
}

/** The newest weight of the animal itself. */
import type { CaseState } from './case-state.ts';

export interface MassAt {
  readonly massG: number;
  /** Null where nobody said when. */
  readonly at: string | null;
}

/** The last weight without a frame on, from admission or from the care after it; null where it was never weighed. */
export function latestMass({ patient, care }: CaseState): MassAt | null {
  const bare = care.weights.filter(({ value }) => !value.withFrame).map(({ value }) => value);
  const last = bare.toSorted((a, b) => (a.at < b.at ? -1 : 1)).at(-1);
  const { massG = null, weighedAt = null } = patient?.value ?? {};
  if (last && (massG === null || weighedAt === null || last.at >= weighedAt)) return { massG: last.massG, at: last.at };
  return massG === null ? null : { massG, at: weighedAt };
}

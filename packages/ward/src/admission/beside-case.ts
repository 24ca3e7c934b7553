/** What is laid beside a new case: published series and questions of law. No verdict. */
import { type LawQuestion, lawQuestions, type OutcomeSeries, outcomeSeries } from '@bonewright/evidence';

export interface CaseInBrief {
  readonly species: string;
  readonly group: 'birds' | 'mammals';
  readonly bone: string;
}

/** How near a series comes to the case; the nearest first. */
export type Nearness =
  | 'same species and bone'
  | 'same species'
  | 'same group and bone'
  | 'same group'
  | 'all casualties';

const NEAREST_FIRST: readonly Nearness[] = [
  'same species and bone',
  'same species',
  'same group and bone',
  'same group',
  'all casualties',
];

export interface SeriesBesideCase {
  readonly series: OutcomeSeries;
  readonly nearness: Nearness;
}

/** The published series that bear on a case, nearest first; those of another group or another bone are left out. */
export function seriesBeside(brief: CaseInBrief): SeriesBesideCase[] {
  return outcomeSeries
    .filter((series) => series.group === 'any' || series.group === brief.group)
    .filter((series) => series.bones.length === 0 || series.bones.includes(brief.bone))
    .map((series) => ({ series, nearness: nearnessOf(series, brief) }))
    .toSorted((a, b) => NEAREST_FIRST.indexOf(a.nearness) - NEAREST_FIRST.indexOf(b.nearness));
}

function nearnessOf(series: OutcomeSeries, { species, bone }: CaseInBrief): Nearness {
  const isOwn = series.species.includes(species.toLowerCase());
  const isBone = series.bones.includes(bone);
  if (isOwn) return isBone ? 'same species and bone' : 'same species';
  if (series.group === 'any') return 'all casualties';
  return isBone ? 'same group and bone' : 'same group';
}

/** The questions of law that bear on a patient, those of its own species first. */
export function lawBeside({ species, group }: CaseInBrief): LawQuestion[] {
  return lawQuestions
    .filter((q) => q.group === 'any' || q.group === group)
    .filter((q) => q.species.length === 0 || q.species.includes(species.toLowerCase()))
    .toSorted((a, b) => b.species.length - a.species.length);
}

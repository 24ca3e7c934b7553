export type { Evaluators } from './evaluators.ts';
export { type RankOptions, rankWith } from './rank.ts';

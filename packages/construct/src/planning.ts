/** Search, what-ifs and improvements with this package's own mechanics. */
import { assessConstruct, evaluateNominal } from './assess.ts';
import type { Case, Construct } from './model/case-file.ts';
import type { Ranking } from './model/plan.ts';
import { type Evaluators, type RankOptions, rankWith } from './search/index.ts';
import { type Improvement, improvementsWith, type WhatIf, whatIfsWith } from './what-if/index.ts';

const MECHANICS: Evaluators = { nominal: evaluateNominal, full: assessConstruct };

/** Up to four plans from the drawer that differ in kind, best first; seeded by the case. */
export const rank = (patientCase: Case, options: RankOptions = {}): Ranking =>
  rankWith(MECHANICS, patientCase, options);

/** What becomes of the worst margin if a pin goes, the patient grows, the IM pin is drawn. */
export const whatIfs = (patientCase: Case, construct: Construct, asked: { readonly pin?: number } = {}): WhatIf[] =>
  whatIfsWith(MECHANICS, patientCase, construct, asked);

/** Up to three changes or measurements that raise the worst margin most. */
export const improvements = (patientCase: Case, construct: Construct): Improvement[] =>
  improvementsWith(MECHANICS, patientCase, construct);

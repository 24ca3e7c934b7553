/** What the search asks of the mechanics. Given to it, so that it can be tried on any. */
import type { Case, Construct } from '../model/case-file.ts';
import type { Plan } from '../model/plan.ts';

export interface Evaluators {
  /** Middle values: every margin's three figures are one. */
  readonly nominal: (patientCase: Case, construct: Construct) => Plan;
  /** Margins with their spread. */
  readonly full: (patientCase: Case, construct: Construct, trials: { samples: number; seed: number }) => Plan;
}

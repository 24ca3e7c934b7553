/** What-ifs and improvements with this package's own mechanics, or with others for a trial. */
import type { Case, Construct } from '../model/case-file.ts';
import { MECHANICS } from '../search/mechanics.ts';
import { type Improvement, improvementsWith } from './improvements.ts';
import { type Asked, type WhatIf, whatIfsWith } from './what-if.ts';

/** What becomes of the worst margin if a pin breaks or comes loose, the patient grows, the IM pin is drawn. */
export const whatIfs = (patientCase: Case, construct: Construct, asked: Asked = {}): WhatIf[] =>
  whatIfsWith(MECHANICS, patientCase, construct, asked);

/** Up to three changes or measurements that raise the worst margin most; each change carries its construct. */
export const improvements = (patientCase: Case, construct: Construct): Improvement[] =>
  improvementsWith(MECHANICS, patientCase, construct);

export type { Improvement } from './improvements.ts';
export type { Asked, WhatIf } from './what-if.ts';

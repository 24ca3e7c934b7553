/** What the long jobs answer, as the planner reads it. */
import type { improvements, whatIfs } from '@bonewright/construct';

export type WhatIf = ReturnType<typeof whatIfs>[number];
export type Improvement = ReturnType<typeof improvements>[number];

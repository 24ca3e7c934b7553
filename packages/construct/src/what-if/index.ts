export { type Improvement, improvementsWith } from './improvements.ts';
export { marginVerdict, type WhatIf, whatIfsWith } from './what-if.ts';

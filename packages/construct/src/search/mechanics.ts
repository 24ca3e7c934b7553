/** This package's own mechanics, as the search and the what-ifs ask for them. */
import { assessConstruct, evaluateNominal } from '../assess.ts';
import type { Evaluators } from './evaluators.ts';

export const MECHANICS: Evaluators = { nominal: evaluateNominal, full: assessConstruct };

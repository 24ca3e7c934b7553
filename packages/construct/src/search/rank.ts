/**
 * From a case to a few plans that differ in kind: every construct of the drawer checked, the most promising of each
 * group solved at middle values, the best of each kind bettered by small moves, the few that are offered assessed in full.
 */
import { profileOf } from '@bonewright/bone';
import { classOf } from '../loads/species.ts';
import type { Case, Construct } from '../model/case-file.ts';
import type { Plan, Ranking } from '../model/plan.ts';
import { candidatesOf, type Ground } from './candidates.ts';
import { frameDirection } from './direction.ts';
import type { Evaluators } from './evaluators.ts';
import { emptyDrawer, nearestWords } from './nearest.ts';
import { differentKinds, differInKind, MOST_OFFERED, ordered } from './offer.ts';
import { otherWays } from './other-ways.ts';
import { refined } from './refine.ts';
import { shortlist } from './shortlist.ts';
import { siteBook } from './sites.ts';
import { type Solved, solverFor } from './solve.ts';

export interface RankOptions {
  /** Called with what is known so far, plans at their middle values first. */
  readonly onProgress?: (soFar: Ranking) => void;
  /** True ends the search with what it has. */
  readonly signalAborted?: () => boolean;
}

/**
 * Ranks what the drawer can do with the mechanics given. Deterministic: trials are seeded by the case.
 * `candidates` counts constructs looked at, `solved` those given to the solver.
 */
export function rankWith(evaluators: Evaluators, patientCase: Case, options: RankOptions = {}): Ranking {
  const missing = emptyDrawer(patientCase);
  if (missing !== null) return { plans: [], candidates: 0, solved: 0, refused: [], nearest: missing };
  const aboutDeg = frameDirection(patientCase);
  const profile = profileOf(patientCase.bone.lengthMm, patientCase.bone.stations, classOf(patientCase));
  const ground: Ground = { patientCase, profile, aboutDeg, sites: siteBook(patientCase, aboutDeg) };
  const field = candidatesOf(ground);
  const refused = [...field.refused]
    .map(([check, count]) => ({ check, count }))
    .toSorted((a, b) => b.count - a.count || (a.check < b.check ? -1 : 1));
  const { solve, solved } = solverFor(patientCase, evaluators.nominal);
  let assessed = 0;
  const said = (plans: readonly Plan[]): Ranking => ({
    plans: ordered(plans),
    candidates: field.count,
    solved: solved() + assessed,
    refused,
  });
  if (field.passed.length === 0) return { ...said([]), nearest: nearestWords(ground, field.refused) };

  const isAborted = options.signalAborted ?? (() => false);
  const kinds = differentKinds(solveAll(shortlist(field.passed), solve, isAborted));
  const waiting = kinds.map(({ plan }) => plan);
  const full: Plan[] = [];
  options.onProgress?.(said(waiting));
  for (const start of kinds) {
    if (isAborted() || full.filter(({ verdict }) => verdict !== 'stop').length === MOST_OFFERED) break;
    waiting.shift();
    const { construct, plan, worth } = refined(ground, start, solve);
    if (!full.every((other) => differInKind(plan, other))) continue;
    full.push(evaluators.full(patientCase, construct, patientCase));
    assessed += 1;
    options.onProgress?.(said([...full, ...waiting]));
    if (full.length > 1) continue;
    for (const other of otherWays(ground, { construct, plan, worth }, solve)) {
      full.push(evaluators.full(patientCase, other.construct, patientCase));
      assessed += 1;
    }
  }
  return said(full.length > 0 ? full : waiting);
}

function solveAll(
  constructs: readonly Construct[],
  solve: (construct: Construct) => Solved | null,
  isAborted: () => boolean,
): Solved[] {
  const found: Solved[] = [];
  for (const construct of constructs) {
    if (isAborted() && found.length > 0) break;
    const solved = solve(construct);
    if (solved) found.push(solved);
  }
  return found;
}

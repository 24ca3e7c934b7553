/** The bone's alignment on films of before and of later: row by row, from one view or from both. */
import { type CaseState, type FilmSet, type FilmState, filmsBefore } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import {
  alignmentFindings,
  bendFinding,
  type Finding,
  type Measured,
  type ReductionFacts,
  reductionFacts,
} from '@bonewright/film';
import { filmOfView, tracedView } from '../trace/use-joining.ts';

export interface Alignment {
  readonly findings: readonly Finding[];
  /** Numbers without a limit; null where one view alone was traced. */
  readonly facts: ReductionFacts | null;
}

type Views = Pick<FilmSet, 'craniocaudal' | 'mediolateral'>;

/** Null where nothing was traced. */
export function alignmentOf({ craniocaudal, mediolateral }: Views, betweenViewsDeg: number): Alignment | null {
  const [a, b] = [craniocaudal, mediolateral].map((film) => film && tracedView(film));
  if (a && b) {
    try {
      const facts = reductionFacts(a, b, betweenViewsDeg);
      return { findings: alignmentFindings(facts), facts };
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
    }
  }
  const alone = [bendOf('craniocaudal', craniocaudal), bendOf('mediolateral', mediolateral)].filter((f) => f !== null);
  return alone.length > 0 ? { findings: alone, facts: null } : null;
}

/** One view alone says how far it is bent there, not to which side. */
function bendOf(view: 'craniocaudal' | 'mediolateral', film: FilmState | null): Finding | null {
  const bend: Measured | undefined = film?.trace?.value.angulationDeg;
  return bend ? bendFinding(view, bend) : null;
}

export function alignmentBefore(state: CaseState): Alignment | null {
  const before = filmsBefore(state);
  return alignmentOf(
    { craniocaudal: filmOfView(before, 'craniocaudal'), mediolateral: filmOfView(before, 'mediolateral') },
    betweenViews(state),
  );
}

const SQUARE_DEG = 90;
export const betweenViews = (state: CaseState): number => state.bone?.value.betweenViewsDeg ?? SQUARE_DEG;

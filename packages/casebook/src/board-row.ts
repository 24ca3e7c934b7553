/** One patient's line on the board, and the number of the next case. */
import { caseFileOf } from './case-file-of.ts';
import type { CaseState, Patient } from './case-state.ts';
import { type Due, dueOf, hasGone } from './due.ts';
import type { Payload } from './events.ts';
import { outOfDate } from './out-of-date.ts';
import type { Stage } from './payloads.ts';
import { stageOf } from './stage.ts';

export interface BoardRow extends Omit<Patient, 'weighedAt'> {
  readonly caseId: string;
  readonly seq: number;
  readonly stage: Stage;
  readonly openedAt: string;
  readonly changedAt: string;
  readonly films: number;
  /** What the chosen construct's assessment said; null where none was chosen or it was not assessed. */
  readonly plan: Payload<'construct-chosen'>['summary'];
  /** What to do next, a sentence each; empty where nothing is due. */
  readonly next: readonly string[];
  /** The earliest first; absent in a row that an older version kept. */
  readonly due?: readonly Due[];
  /** It has gone, and its outcomes are written: nothing more is due. The board lists the others. */
  readonly ended: boolean;
}

/** The board's line for a case; null before it was opened. */
export function boardRow(state: CaseState): BoardRow | null {
  if (!state.patient) return null;
  const { weighedAt: _, ...patient } = state.patient.value;
  const due = dueOf(state);
  return {
    ...patient,
    caseId: state.caseId,
    seq: state.seq,
    stage: stageOf(state),
    openedAt: state.openedAt,
    changedAt: state.changedAt,
    films: state.films.length,
    plan: state.construct?.value.summary ?? null,
    next: nextSteps(state),
    due,
    ended: hasGone(state) && due.length === 0,
  };
}

function nextSteps(state: CaseState): string[] {
  if (hasGone(state) || state.course.frameTaken) return [];
  if (state.films.length < 2) return ['Add two views of the bone.'];
  const { missing } = caseFileOf(state);
  if (missing.length > 0) return [...missing];
  if (!state.construct) return ['Choose a plan.'];
  return outOfDate(state).map(({ part, because }) => `Look at the ${part} again: ${because}.`);
}

/** The next free number of the year, `26-042`. `taken` holds the numbers in use, of any year and in any form. */
export function nextCaseNumber(taken: readonly string[], year: number): string {
  const prefix = yearOfNumbers(year);
  const used = taken
    .filter((number) => number.startsWith(prefix))
    .map((number) => Number(number.slice(prefix.length)))
    .filter((count) => Number.isInteger(count));
  return prefix + String(Math.max(0, ...used) + 1).padStart(3, '0');
}

/** How the case numbers of a year begin. */
export const yearOfNumbers = (year: number): string => `${String(year % 100).padStart(2, '0')}-`;

/** The later of two numbers of one year. */
export const laterNumber = (a: string, b: string): string => ((a.length - b.length || (a < b ? -1 : 1)) > 0 ? a : b);

/** Where a patient is on the path from admission to release. */
import type { CaseState } from './case-state.ts';
import { STAGES, type Stage } from './payloads.ts';

/** The stage somebody entered, or the one that the work done has reached, whichever is further. */
export function stageOf(state: CaseState): Stage {
  const reached = STAGES.indexOf(workReached(state));
  const entered = state.enteredStage ? STAGES.indexOf(state.enteredStage.value) : 0;
  return STAGES[Math.max(reached, entered)] ?? 'admission';
}

function workReached(state: CaseState): Stage {
  if (state.course.released || state.course.patient) return 'release';
  if (state.course.frameTaken) return 'rechecks';
  if (state.sheets.length > 0 || state.theatre.pins.length > 0) return 'theatre';
  if (state.bone) return 'plan';
  return state.films.length > 0 ? 'films' : 'admission';
}

/** The construct under the hand, its figures, and the record that follows when the hand rests. */
import type { CaseState } from '@bonewright/casebook';
import { type Case, type Construct, constructSchema } from '@bonewright/construct';
import { useMemo, useRef } from 'react';
import type { Append } from '../sync/new-event.ts';
import { startingConstruct } from './edit/edits.ts';
import { type ConstructHistory, useHistory } from './edit/use-history.ts';
import { useUndoKeys } from './edit/use-undo-keys.ts';
import type { Engine } from './engine/engine.ts';
import { type Assessment, useAssessment } from './engine/use-assessment.ts';
import { constructChosen, drawerSet, goneFromDrawer, sameText } from './planned-case.ts';

export interface PlanUnderHand {
  readonly history: ConstructHistory;
  readonly assessment: Assessment;
  /** Records the construct on the screen at once, if it is not recorded yet. */
  readonly keepNow: () => void;
}

export function usePlan(
  engine: Engine,
  state: CaseState,
  patientCase: Case,
  append: Append,
  renumber: (places: readonly number[]) => void,
): PlanUnderHand {
  const { construct: recorded, ranking } = state;
  // biome-ignore lint/correctness/useExhaustiveDependencies: only what was chosen and ranked matters, not the rest of the state
  const kept = useMemo(() => usable(state, patientCase), [recorded, ranking, patientCase]);
  const latest = useRef<Assessment | null>(null);
  const keep = (construct: Construct) => {
    const { plan, exactness, construct: about } = latest.current ?? {};
    const full = about === construct && exactness === 'full' && plan ? plan : null;
    append([...(state.drawer ? [] : [drawerSet(patientCase.drawer)]), constructChosen(construct, full)]);
  };
  const history = useHistory(kept, keep, renumber);
  const shown = history.construct && goneFromDrawer(history.construct, patientCase.drawer) ? kept : history.construct;
  const assessment = useAssessment(engine, patientCase, shown);
  latest.current = assessment;
  useUndoKeys(history);
  const keepNow = () => {
    const isRecorded =
      state.construct && shown && sameText(constructSchema.parse(state.construct.value.construct)) === sameText(shown);
    if (shown && !isRecorded) keep(shown);
  };
  return { history: { ...history, construct: shown }, assessment, keepNow };
}

/** What was chosen; else the best that was ranked; else one to start from. Never one that the drawer cannot build. */
function usable(state: CaseState, patientCase: Case): Construct | null {
  const known = [state.construct?.value.construct, state.ranking?.value.plans[0]?.construct];
  const constructs = known.filter((construct) => construct !== undefined).map((each) => constructSchema.parse(each));
  return constructs.find((each) => !goneFromDrawer(each, patientCase.drawer)) ?? startingConstruct(patientCase);
}

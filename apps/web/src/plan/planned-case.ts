/** The record as the planner reads and writes it. */
import {
  type CaseState,
  caseFileOf,
  drawerOf,
  type PlanSummary,
  type Stock,
  summarisePlan,
  summariseRanking,
} from '@bonewright/casebook';
import {
  type Case,
  type Construct,
  constructSchema,
  type Drawer,
  type Plan,
  type Ranking,
} from '@bonewright/construct';
import { useMemo } from 'react';
import type { NewEvent } from '../sync/new-event.ts';
import { usePractice } from '../sync/use-case.ts';
import { today } from '../words/time.ts';
import { START_DRAWER } from './drawer/start-set.ts';
import { madeOf, type PlanCardFacts, planName } from './ranking/card-facts.ts';

export interface PlannedCase {
  readonly patientCase: Case | null;
  readonly missing: readonly string[];
  /** Neither the case nor the practice has said what the drawer holds: common sizes stand in. */
  readonly isStartDrawer: boolean;
}

/** Stays the same object while only the construct changes, so that nothing is solved twice. */
export function usePlannedCase(state: CaseState): PlannedCase {
  const { patient, bone, reduction, fracture, keepOut, corridors, softTissueMm, drawer } = state;
  const { stock } = usePractice().state;
  /** A plan that has its drawer keeps it, whatever comes and goes in the practice's. */
  const standsIn = drawer ? null : stock;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the rest of the state does not enter mechanics
  return useMemo(() => {
    const kept = standsIn && practiceDrawer(standsIn);
    const withDrawer = drawer ?? { value: kept ?? START_DRAWER, seq: 0, at: '', by: '' };
    const { caseFile, missing } = caseFileOf({ ...state, drawer: withDrawer, construct: null });
    return { patientCase: caseFile, missing, isStartDrawer: drawer === null && !kept };
  }, [patient, bone, reduction, fracture, keepOut, corridors, softTissueMm, drawer, standsIn]);
}

/** What the practice's drawer holds today; null where nothing can be planned from it. */
export function practiceDrawer(stock: Stock): Drawer | null {
  const drawer = drawerOf(stock, today());
  return drawer.pins.length > 0 && drawer.columns.length > 0 ? drawer : null;
}

export function cardsOf(plans: readonly PlanSummary[], drawer: Drawer, shown: Construct): PlanCardFacts[] {
  const now = sameText(shown);
  return plans.map((plan, i) => {
    const construct = constructSchema.parse(plan.construct);
    return {
      key: `${i} ${plan.label}`,
      name: planName(plan.label),
      p05: plan.worst.p05,
      lines: madeOf(construct, drawer, plan.holes, plan.massG),
      verdict: plan.verdict,
      lastResort: plan.lastResort,
      isShown: sameText(construct) === now,
      construct,
    };
  });
}

/** A text that two constructs share when they are built alike, however they were written down. */
export function sameText({ im, pins, column, grip }: Construct): string {
  const columns = [column].flat().map(({ drawerId, clearanceMm, side }) => [drawerId, clearanceMm, side ?? 'near']);
  const through = pins.map(({ drawerId, sMm, tiltDeg, aboutDeg }) => [drawerId, sMm, tiltDeg, aboutDeg]);
  return JSON.stringify([im ? [im.drawerId, im.tiedIn] : null, through, columns, grip]);
}

export const drawerSet = (drawer: Drawer): NewEvent => ({ kind: 'drawer-set', payload: drawer });

export const plansRanked = (ranking: Ranking): NewEvent => ({
  kind: 'plans-ranked',
  payload: summariseRanking(ranking),
});

/** `plan`: the full assessment of that construct, null where it is not in yet. */
export function constructChosen(construct: Construct, plan: Plan | null): NewEvent {
  return { kind: 'construct-chosen', payload: { construct, summary: plan && withoutConstruct(plan) } };
}

/** What the construct names that the drawer no longer holds, in words; null where all is there. */
export function goneFromDrawer({ im, pins, column }: Construct, drawer: Drawer): string | null {
  const gone = [
    ...pins.flatMap((pin, i) => (drawer.pins.some(({ id }) => id === pin.drawerId) ? [] : [`the pin of P${i + 1}`])),
    ...(im && !drawer.imPins.some(({ id }) => id === im.drawerId) ? ['the IM pin'] : []),
    ...[column]
      .flat()
      .flatMap(({ drawerId }) => (drawer.columns.some(({ id }) => id === drawerId) ? [] : ['the column'])),
  ];
  return gone.length > 0 ? `No longer in the drawer: ${gone.join(', ')}.` : null;
}

function withoutConstruct(plan: Plan) {
  const { construct: _, ...summary } = summarisePlan(plan);
  return summary;
}

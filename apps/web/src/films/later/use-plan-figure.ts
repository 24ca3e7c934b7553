/** The plan as drawn in the view of one film; null where there is none, or the film's view is not known. */
import type { CaseState, View } from '@bonewright/casebook';
import { type Construct, constructSchema, type ViewFigure, viewFigures } from '@bonewright/construct';
import { useMemo } from 'react';
import { goneFromDrawer, usePlannedCase } from '../../plan/planned-case.ts';

export interface PlanInViews {
  readonly construct: Construct;
  readonly figures: Readonly<Record<View, ViewFigure>>;
  /** The middle of the fracture along the bone. */
  readonly fractureMm: number;
}

export function usePlanInViews(state: CaseState): PlanInViews | null {
  const { patientCase } = usePlannedCase(state);
  const chosen = state.construct;
  return useMemo(() => {
    if (!patientCase || !chosen) return null;
    const construct = constructSchema.parse(chosen.value.construct);
    if (goneFromDrawer(construct, patientCase.drawer)) return null;
    const [craniocaudal, mediolateral] = viewFigures(patientCase, construct);
    if (!craniocaudal || !mediolateral) return null;
    const { fromMm, toMm } = patientCase.fracture;
    return { construct, figures: { craniocaudal, mediolateral }, fractureMm: (fromMm + toMm) / 2 };
  }, [patientCase, chosen]);
}

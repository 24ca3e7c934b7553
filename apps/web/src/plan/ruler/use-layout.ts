/** The ruler's layout, and its bone found once for as long as the plane of the frame stays. */
import type { Case } from '@bonewright/construct';
import { useMemo } from 'react';
import type { Placement } from '../../drawing/geometry/placement.ts';
import { sideProfile } from '../../drawing/geometry/side-profile.ts';
import { layOut, type RulerLayout } from './layout.ts';

/** Null before the width is known. */
export function useLayout(
  patientCase: Case,
  placement: Placement,
  widthPx: number,
  mostHeightPx: number,
): RulerLayout | null {
  const { aboutDeg } = placement;
  const profile = useMemo(() => sideProfile(patientCase, aboutDeg), [patientCase, aboutDeg]);
  return useMemo(
    () => (widthPx > 0 ? layOut(patientCase, placement, profile, widthPx, mostHeightPx) : null),
    [patientCase, placement, profile, widthPx, mostHeightPx],
  );
}

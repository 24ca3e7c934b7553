/** All checks of a construct, worst first, then in the order a surgeon reads them. */
import { byWorry, type Check } from '../model/plan.ts';
import { canalMeasured } from './canal-measured.ts';
import { columnHeat } from './column-heat.ts';
import { columnSize } from './column-size.ts';
import type { CheckContext } from './context.ts';
import { corridor } from './corridor.ts';
import { drawerStock } from './drawer-stock.ts';
import { fissureDistance } from './fissure-distance.ts';
import { fractureDistance } from './fracture-distance.ts';
import { gapStrain } from './gap-strain.ts';
import { growthPlate } from './growth-plate.ts';
import { imFill } from './im-fill.ts';
import { imRoom } from './im-room.ts';
import { jointDistance } from './joint-distance.ts';
import { massCarried } from './mass-carried.ts';
import { pinRatio } from './pin-ratio.ts';
import { pinSpacing } from './pin-spacing.ts';
import { pinSpread } from './pin-spread.ts';
import { pinsPerFragment } from './pins-per-fragment.ts';
import { skinClearance } from './skin-clearance.ts';

type CheckRule = (context: CheckContext) => readonly Check[];

/** Those that look at one pin alone, whatever its neighbours are. */
const PIN_CHECKS: readonly CheckRule[] = [
  pinRatio,
  fractureDistance,
  fissureDistance,
  jointDistance,
  corridor,
  imRoom,
  canalMeasured,
];

const CONSTRUCT_CHECKS: readonly CheckRule[] = [
  growthPlate,
  pinsPerFragment,
  pinSpacing,
  pinSpread,
  imFill,
  columnSize,
  skinClearance,
  columnHeat,
  massCarried,
  drawerStock,
  gapStrain,
];

/** Every check of the construct; each pair of id and pin occurs once. */
export function runChecks(context: CheckContext): readonly Check[] {
  const checks = [...PIN_CHECKS, ...CONSTRUCT_CHECKS].flatMap((check) => check(context));
  return checks.toSorted(byWorry);
}

/** Only those that look at one pin alone: with many pins at once, the places where a pin may go. */
export const runPinChecks = (context: CheckContext): readonly Check[] => PIN_CHECKS.flatMap((check) => check(context));

/** The others: what is left to check of a construct whose pins stand in such places. */
export const runFrameChecks = (context: CheckContext): readonly Check[] =>
  CONSTRUCT_CHECKS.flatMap((check) => check(context));

export { type CheckContext, checkContext, type FrameFacts } from './context.ts';

import type { Construct } from './case-file.ts';
import type { Plan } from './plan.ts';

/** The construct that a plan stands for, as a case holds it. */
export function constructOf(plan: Plan): Construct {
  return {
    im: plan.im && { drawerId: plan.im.drawerId, tiedIn: plan.im.tiedIn },
    pins: plan.pins.map(({ drawerId, sMm, tiltDeg, aboutDeg, cortices }) => ({
      drawerId,
      sMm,
      tiltDeg,
      aboutDeg,
      ...(cortices ? { cortices } : {}),
    })),
    column: plan.column.map(({ drawerId, clearanceMm, side }) => ({ drawerId, clearanceMm, side })),
    grip: plan.grip ?? 'usual',
  };
}

import type { Construct } from './case-file.ts';
import type { Plan } from './plan.ts';

/** The construct that a plan stands for, as a case holds it. Plans are made with the usual grip. */
export function constructOf(plan: Plan): Construct {
  return {
    im: plan.im && { drawerId: plan.im.drawerId, tiedIn: plan.im.tiedIn },
    pins: plan.pins.map(({ drawerId, sMm, tiltDeg, aboutDeg }) => ({ drawerId, sMm, tiltDeg, aboutDeg })),
    column: plan.column.map(({ drawerId, clearanceMm, side }) => ({ drawerId, clearanceMm, side })),
    grip: 'usual',
  };
}

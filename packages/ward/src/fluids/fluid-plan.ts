/** Fluids in ml per hour and drops per minute from mass, dryness and a rate that somebody chose. */
import { InputError } from '@bonewright/fault';

const GRAMS_PER_KG = 1000;
const HOURS_PER_DAY = 24;
const MINUTES_PER_HOUR = 60;
const SECONDS_PER_MINUTE = 60;

export interface FluidRequest {
  readonly massG: number;
  /** Of body weight, as judged; 0 where there is none. */
  readonly dehydrationPercent: number;
  /** As chosen from the published ranges. */
  readonly maintenanceMlPerKgDay: number;
  /** Lost besides: blood, drainage, diarrhoea. */
  readonly otherLossesMl: number;
  /** Over how long deficit and losses are made good, h. */
  readonly overHours: number;
}

export interface FluidPlan {
  readonly deficitMl: number;
  /** Over the same hours. */
  readonly maintenanceMl: number;
  readonly totalMl: number;
  readonly mlPerHour: number;
}

/**
 * What goes in over `overHours`: deficit (grams of body weight times per cent), losses, and maintenance for as long.
 * Throws InputError where a figure is not one that a patient can have.
 */
export function fluidPlan(request: FluidRequest): FluidPlan {
  const { massG, dehydrationPercent, maintenanceMlPerKgDay, otherLossesMl, overHours } = request;
  requirePositive(massG, 'massG', 'weigh the patient, in grams');
  requirePositive(overHours, 'overHours', 'say over how many hours');
  requireWithin(dehydrationPercent, 'dehydrationPercent', 100);
  requireWithin(maintenanceMlPerKgDay, 'maintenanceMlPerKgDay', Number.MAX_VALUE);
  requireWithin(otherLossesMl, 'otherLossesMl', Number.MAX_VALUE);
  const deficitMl = (massG * dehydrationPercent) / 100;
  const maintenanceMl = (maintenanceMlPerDay(massG, maintenanceMlPerKgDay) * overHours) / HOURS_PER_DAY;
  const totalMl = deficitMl + otherLossesMl + maintenanceMl;
  return { deficitMl, maintenanceMl, totalMl, mlPerHour: totalMl / overHours };
}

/** Maintenance of one day, ml. */
export const maintenanceMlPerDay = (massG: number, mlPerKgDay: number): number => (massG / GRAMS_PER_KG) * mlPerKgDay;

/** A rate in ml/h by mass, for a bolus or during surgery. */
export const byMass = (massG: number, mlPerKg: number): number => (massG / GRAMS_PER_KG) * mlPerKg;

/** Drops a minute through a giving set of so many drops a ml. */
export function dropsPerMinute(mlPerHour: number, dropsPerMl: number): number {
  requirePositive(dropsPerMl, 'dropsPerMl', 'read the drops a ml on the giving set');
  return (mlPerHour * dropsPerMl) / MINUTES_PER_HOUR;
}

/** Seconds from one drop to the next; null where nothing runs. */
export function secondsPerDrop(mlPerHour: number, dropsPerMl: number): number | null {
  const perMinute = dropsPerMinute(mlPerHour, dropsPerMl);
  return perMinute > 0 ? SECONDS_PER_MINUTE / perMinute : null;
}

function requirePositive(value: number, path: string, hint: string): void {
  if (!(value > 0 && Number.isFinite(value))) throw new InputError(`${value} is not more than nothing`, path, hint);
}

function requireWithin(value: number, path: string, most: number): void {
  if (!(value >= 0 && value <= most)) throw new InputError(`${value} is out of range`, path, 'correct the figure');
}

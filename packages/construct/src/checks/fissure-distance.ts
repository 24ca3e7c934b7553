/** Pin to the nearest fissure: a hole that meets one lets it run. */
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import type { CheckContext, CheckedPin } from './context.ts';
import { judged } from './limits.ts';
import { inMm, pinName } from './words.ts';

export function fissureDistance({ pins, case: { fracture } }: CheckContext): Check[] {
  if (fracture.fissuresMm.length === 0) return [];
  return pins.map((pin) => {
    const distanceMm = Math.min(...fracture.fissuresMm.map(([from, to]) => holeTo(pin, from, to)));
    return judged({
      id: 'fissure-distance',
      pin: pin.index + 1,
      value: distanceMm,
      unit: 'mm',
      limits: { worse: 'below', watch: value('rule.fissure-distance.watch') * pin.boneWidthMm, stop: NOTHING_LEFT_MM },
      shown: inMm,
      says:
        distanceMm < NOTHING_LEFT_MM
          ? `${pinName(pin.index)} runs into a fissure`
          : `${pinName(pin.index)} leaves ${inMm(distanceMm)} of bone to the nearest fissure`,
      evidence: ['rule.fissure-distance.watch'],
    });
  });
}

/** A hole may end where the fissure begins, no further. */
const NOTHING_LEFT_MM = 0;

/** From the hole's edge; below zero where it overlaps. */
function holeTo(pin: CheckedPin, fromMm: number, toMm: number): number {
  const [low, high] = [Math.min(fromMm, toMm), Math.max(fromMm, toMm)];
  return Math.max(low - pin.crossesMm[1], pin.crossesMm[0] - high) - pin.drawer.diameterMm / 2;
}

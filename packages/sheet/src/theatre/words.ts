/** The words of a sheet: figures with their decimals, pins and patient. */
import { type Case, directionWords, type PlanPin } from '@bonewright/construct';

/** A figure for the page: fixed decimals, a true minus sign. */
export const figure = (value: number, decimals = 1): string => value.toFixed(decimals).replace('-', '−');

/** How a pin is aimed: `medial`, `20° cranial, 10° distal`. */
export function aim({ aboutDeg, tiltDeg }: PlanPin): string {
  return [
    directionWords(aboutDeg),
    tiltDeg !== 0 && `${figure(Math.abs(tiltDeg), 0)}° ${tiltDeg > 0 ? 'distal' : 'proximal'}`,
  ]
    .filter(Boolean)
    .join(', ');
}

/** Distance along the bone from a pin to the near end of the broken stretch, mm. */
export const fromFractureMm = (pin: PlanPin, { fracture }: Case): number =>
  Math.max(0, fracture.fromMm - pin.sMm, pin.sMm - fracture.toMm);

/** A pin as the drawer holds it: `0.8 smooth`, `21G needle`. */
export function wireWords({ drawerId, diameterMm }: PlanPin, { drawer }: Case): string {
  const held = drawer.pins.find((p) => p.id === drawerId);
  if (held?.kind === 'needle') return `${held.gauge ?? ''}G needle`;
  return `${figure(diameterMm, 2).replace(/0$/, '')} ${held?.kind.replace('-', ' ') ?? ''}`;
}

/** The patient's line under the title: species, age, mass, side and bone. */
export function patientLine({ patient, bone }: Case, weighed = ''): string {
  const mass = `${figure(patient.massG, 0)} g${weighed && ` on ${weighed}`}`;
  return [patient.species, patient.ageClass, mass, [bone.side, bone.name].filter(Boolean).join(' ')]
    .filter(Boolean)
    .join(', ');
}

/** What the patient asks of its construct: one force and two moments at once, and how often a gentler step comes. */
import { value } from '@bonewright/evidence';
import type { Case } from '../model/case-file.ts';
import type { LoadName } from '../model/plan.ts';
import { classOf, isGrowing, isHedgehog, isWing } from './species.ts';

/** One g on earth, in N: grams to body weight. */
const NEWTON_PER_G = 9.80665e-3;
const MM_PER_CM = 10;
const DAYS_PER_WEEK = 7;

export interface Demand {
  readonly axialN: number;
  readonly bendingNmm: number;
  readonly torsionNmm: number;
  /** Each ordinary step over the misstep. */
  readonly repeatedShare: number;
  /** Steps until the frame comes off. */
  readonly cycles: number;
}

/** The largest loads by mass and species, or those the user typed. */
export function demandOf(patientCase: Case): Demand {
  const { patient, loads = {} } = patientCase;
  const weightN = patient.massG * NEWTON_PER_G;
  const species = classOf(patientCase);
  const leverShare = Math.cbrt(patient.massG / value('loads.bending.reference-mass'));
  const curl = isHedgehog(patientCase) ? value('loads.curl.factor') : 1;
  const bendingNmm = loads.bendingNmm ?? value('loads.misstep.bending') * MM_PER_CM * weightN * leverShare * curl;
  const days = loads.days ?? unionWeeks(patientCase) * DAYS_PER_WEEK;
  return {
    axialN: loads.axialN ?? value('loads.misstep.axial') * weightN,
    bendingNmm,
    torsionNmm: loads.torsionNmm ?? bendingNmm * value('loads.torsion.share'),
    repeatedShare: value(`loads.stance.${species}`) / value('loads.misstep.axial'),
    cycles: (loads.cyclesPerDay ?? value('loads.cycles.caged')) * days,
  };
}

/** Expected weeks to union by class, age and mass. */
export const unionWeeks = (patientCase: Case): number => value(unionWeeksId(patientCase));

/** The evidence entry behind `unionWeeks`. */
export function unionWeeksId(patientCase: Case): string {
  if (classOf(patientCase) === 'bird' || isGrowing(patientCase)) return 'healing.union.bird';
  const large = patientCase.patient.massG >= value('healing.union.large-from');
  return large ? 'healing.union.large-mammal' : 'healing.union.small-mammal';
}

/** What the patient does when that load comes, in words. */
export function eventOf(patientCase: Case, load: LoadName): string {
  const twist = load === 'torsion';
  if (isWing(patientCase)) return twist ? 'twist of a flap' : 'flap against the cage';
  if (classOf(patientCase) === 'bird') return twist ? 'twist on the perch' : 'push-off or landing on a perch';
  if (isHedgehog(patientCase) && !load.startsWith('axial')) return twist ? 'twist while rolling up' : 'curl';
  return twist ? 'twist' : 'misstep';
}

/** Size of a load case: N along the bone, N·mm otherwise. */
export function sizeOf(demand: Pick<Demand, 'axialN' | 'bendingNmm' | 'torsionNmm'>, load: LoadName): number {
  if (load === 'torsion') return demand.torsionNmm;
  return load.startsWith('axial') ? demand.axialN : demand.bendingNmm;
}

/** The plan that is printed: a construct's parts with their sizes, its checks, figures and verdict. */
import { isthmus, sectionAt, wallAt, widthAcross } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import { checkContext, runChecks } from './checks/index.ts';
import type { Case, Construct } from './model/case-file.ts';
import { columnsOf } from './model/figures.ts';
import {
  eachLoad,
  LOADS,
  type LoadFigures,
  type LoadName,
  type Margin,
  type Plan,
  type Verdict,
  worstVerdict,
} from './model/plan.ts';
import { evidenceOf } from './strength/evidence-of.ts';
import { elasticHoleFactor, holeFactor } from './strength/holes.ts';
import type { Place } from './strength/places.ts';
import { ruleOf } from './strength/rules.ts';
import type { Solution } from './strength/solver.ts';
import { imTipMm } from './to-frame/im-line.ts';
import { cutLengthMm, freeLengthMm, imLengthMm, massesOf } from './to-frame/masses.ts';

/** A construct solved at its middle figures. */
export interface Figured {
  readonly patientCase: Case;
  readonly construct: Construct;
  readonly solution: Solution;
  readonly places: readonly Place[];
  readonly loads: Readonly<Record<LoadName, Omit<LoadFigures, 'margin'>>>;
  readonly weakest: Readonly<Record<LoadName, { readonly margin: number; readonly words: string }>>;
}

/** Puts a plan together from the figures, each load's margin and the sensitivities. */
export function planOf(figured: Figured, marginOf: (load: LoadName) => Margin, sensitivity: Plan['sensitivity']): Plan {
  const { patientCase, construct, solution } = figured;
  const { figures, layout } = solution;
  const masses = massesOf(patientCase, construct, figures, layout);
  const loads = eachLoad((load) => {
    const margin = marginOf(load);
    const governs = ruleOf(figured.places, margin.weakest);
    return { ...figured.loads[load], margin, governs, evidence: evidenceOf(patientCase, construct, load) };
  });
  const { gapStrainPercent } = loads['axial-ball'];
  const checks = runChecks(checkContext(patientCase, construct, { figures, layout, ...masses, gapStrainPercent }));
  const worst = worstVerdict([
    ...checks.map((c) => c.verdict),
    ...LOADS.map((load) => marginVerdict(loads[load].margin)),
  ]);
  return {
    label: 'as chosen',
    lastResort: false,
    im: imOf(figured),
    pins: pinsOf(figured),
    column: columnsOf(construct).map((column, c) => ({
      drawerId: column.drawerId,
      clearanceMm: column.clearanceMm,
      side: layout.columns[c]!.side,
      diameterMm: figures.columns[c]!.diameterMm,
      fromMm: layout.columns[c]!.fromMm,
      toMm: layout.columns[c]!.toMm,
      massG: masses.columnMassesG[c]!,
    })),
    grip: construct.grip,
    holes: layout.pins.reduce((sum, pin) => sum + pin.cortices, 0),
    massG: masses.massG,
    massPercentBody: (100 * masses.massG) / patientCase.patient.massG,
    checks,
    loads,
    sensitivity,
    verdict: worst,
  };
}

/** A margin is judged by its low end. */
export function marginVerdict({ p05 }: Margin): Verdict {
  if (p05 < value('margin.stop')) return 'stop';
  return p05 < value('margin.watch') ? 'watch' : 'good';
}

function imOf({ patientCase, construct, solution }: Figured): Plan['im'] {
  const { figures, layout } = solution;
  if (!construct.im || !figures.im) return null;
  const { diameterMm } = figures.im;
  const { canalBasis } = figures.profile;
  const narrowest = isthmus(figures.profile, 0, imTipMm(patientCase, figures)).canalMm;
  return {
    drawerId: construct.im.drawerId,
    tiedIn: construct.im.tiedIn,
    diameterMm,
    lengthMm: imLengthMm(patientCase, figures, layout),
    canalFill: canalBasis === 'usual bore of the class' || narrowest === 0 ? null : diameterMm / narrowest,
  };
}

function pinsOf({ construct, solution }: Figured): Plan['pins'] {
  const { figures, layout } = solution;
  return construct.pins.map(({ drawerId, sMm, tiltDeg, aboutDeg, cortices }, i) => {
    const { diameterMm, coreMm } = figures.pins[i]!;
    const ring = sectionAt(figures.profile, sMm);
    const width = widthAcross(ring, aboutDeg);
    const bore = wallAt(ring, aboutDeg);
    return {
      drawerId,
      sMm,
      tiltDeg,
      aboutDeg,
      cortices,
      diameterMm,
      freeLengthMm: freeLengthMm(layout.pins[i]!, figures),
      ratio: diameterMm / width,
      hole: holeFactors(coreMm / width, bore.canalRadiusMm / bore.outerRadiusMm),
      cutLengthMm: cutLengthMm(layout.pins[i]!, figures),
    };
  });
}

function holeFactors(ratio: number, bore: number): NonNullable<Plan['pins'][number]['hole']> {
  return {
    measured: holeFactor(ratio),
    elasticBending: elasticHoleFactor('bending', bore, ratio),
    elasticTorsion: elasticHoleFactor('torsion', bore, ratio),
  };
}

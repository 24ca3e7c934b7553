/** For tests of the search alone: mechanics that answer at once, by the guess that orders candidates. */
import { checkContext, runChecks } from '../checks/index.ts';
import type { Case, Construct } from '../model/case-file.ts';
import { columnsOf } from '../model/figures.ts';
import { type LoadFigures, type Plan, worstVerdict } from '../model/plan.ts';
import { frameFacts } from '../to-frame/masses.ts';
import { estimateMargin } from './estimate.ts';
import type { Evaluators } from './evaluators.ts';

/** `scale` makes every margin so many times what it is: a patient far heavier or lighter. */
export function standIn(scale = 1): Evaluators {
  const plan = (patientCase: Case, construct: Construct, spread: number): Plan => {
    const known = frameFacts(patientCase, construct);
    const checks = runChecks(checkContext(patientCase, construct, known));
    const helped = construct.im ? (construct.im.tiedIn ? 1.4 : 1.2) : 1;
    const p50 = estimateMargin(known) * helped * scale;
    const figures: LoadFigures = {
      stiffness: p50,
      unit: 'N/mm',
      gapMotionMm: 0.1,
      gapStrainPercent: null,
      peakPinMPa: 100,
      peakImMPa: null,
      peakColumnMPa: 5,
      peakBoneMPa: 20,
      margin: { p05: p50 / spread, p50, p95: p50 * spread, weakest: 'P1 at the near wall' },
    };
    const verdict = p50 / spread < 1 ? 'stop' : p50 / spread < 1.5 ? 'watch' : 'good';
    const loads = { 'bending-in-plane': figures, 'bending-out-of-plane': figures, torsion: figures };
    const im = construct.im && patientCase.drawer.imPins.find(({ id }) => id === construct.im?.drawerId);
    return {
      label: 'as chosen',
      lastResort: false,
      im: im ? { ...construct.im!, diameterMm: im.diameterMm, lengthMm: 40, canalFill: 0.4 } : null,
      pins: construct.pins.map((pin, i) => ({
        ...pin,
        diameterMm: known.figures.pins[i]!.diameterMm,
        freeLengthMm: 5,
        ratio: 0.2,
        cutLengthMm: 20,
      })),
      column: columnsOf(construct).map((column, i) => ({
        drawerId: column.drawerId,
        clearanceMm: column.clearanceMm,
        side: column.side ?? 'near',
        diameterMm: known.figures.columns[i]!.diameterMm,
        fromMm: known.layout.columns[i]!.fromMm,
        toMm: known.layout.columns[i]!.toMm,
        massG: known.columnMassesG[i]!,
      })),
      holes: 2 * construct.pins.length,
      massG: known.massG,
      massPercentBody: (100 * known.massG) / patientCase.patient.massG,
      checks,
      loads: { 'axial-ball': figures, 'axial-guided': figures, ...loads },
      sensitivity: [],
      verdict: worstVerdict([verdict, ...checks.map((check) => check.verdict)]),
    };
  };
  return {
    nominal: (patientCase, construct) => plan(patientCase, construct, 1),
    full: (patientCase, construct) => plan(patientCase, construct, 1.4),
  };
}

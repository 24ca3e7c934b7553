/** The frame's share of the load as the callus stiffens, and what is left of the margins as the frame is taken down. */
import { value } from '@bonewright/evidence';
import { sizeOf } from '../loads/demand.ts';
import type { Case, Construct } from '../model/case-file.ts';
import { checkConstruct } from '../model/case-rules.ts';
import { nominalFigures } from '../model/figures.ts';
import { LOADS, type LoadName } from '../model/plan.ts';
import { figuresOfLoad, weakestUnder } from '../strength/figures-of-load.ts';
import { type ConstructSolver, constructSolver } from '../strength/solver.ts';
import { CALLUS } from '../to-frame/callus-part.ts';
import { callusModulus, type Healing } from './callus.ts';
import { stagesOf } from './stages.ts';

export interface StageLoad {
  readonly load: LoadName;
  readonly stiffness: number;
  readonly unit: 'N/mm' | 'N·mm/deg';
  /** What of the load does not go through the callus, 0 to 1. */
  readonly frameShare: number;
  readonly gapStrainPercent: number | null;
  /** Middle value; the callus itself is not judged. */
  readonly margin: number;
  readonly weakest: string;
}

export interface Stage {
  /** `as it stands`, `IM pin drawn`, ... */
  readonly name: string;
  readonly construct: Construct;
  readonly loads: readonly StageLoad[];
}

/** Share of the load along the bone that the frame carries, ends guided: 1 without callus. */
export function frameShare(patientCase: Case, construct: Construct, healing: Healing): number {
  return stageLoads(patientCase, construct, healing).find((l) => l.load === 'axial-guided')!.frameShare;
}

/** Whether the share lies under the limit at which frames came off safely. */
export const mayComeOff = (share: number): boolean => share < value('healing.load-share.frame-off');

/**
 * Each stage of a take-down at that state of healing, the whole frame first. A stage that would leave a fragment
 * without a pin is not offered. Throws InputError for a construct that cannot be.
 */
export function takeDown(patientCase: Case, construct: Construct, healing: Healing): Stage[] {
  checkConstruct(patientCase, construct, 'construct');
  return stagesOf(patientCase, construct).map(({ name, construct: left }) => ({
    name,
    construct: left,
    loads: stageLoads(patientCase, left, healing),
  }));
}

function stageLoads(patientCase: Case, construct: Construct, healing: Healing): StageLoad[] {
  const figures = { ...nominalFigures(patientCase, construct), callusYoungMPa: callusModulus(patientCase, healing) };
  const solver = constructSolver(patientCase, construct, figures);
  const solution = solver.solve(figures);
  return LOADS.map((load) => {
    const { stiffness, unit, gapStrainPercent } = figuresOfLoad(patientCase, solver, load, solution);
    const { margin, words } = weakestUnder(solver, load, solution);
    const share = 1 - throughCallus(solver, load) / sizeOf(figures.demand, load);
    return {
      load,
      stiffness,
      unit,
      gapStrainPercent,
      frameShare: Math.min(1, Math.max(0, share)),
      margin,
      weakest: words,
    };
  });
}

/** Force or moment that the callus passes on, of the kind that was laid on. */
function throughCallus({ frame }: ConstructSolver, load: LoadName): number {
  const at = 12 * (LOADS.indexOf(load) * frame.members.length + frame.members.indexOf(CALLUS));
  const [n, , , t, my, mz] = frame.outputs.memberEnds.subarray(at, at + 6);
  if (load.startsWith('axial')) return Math.abs(n!);
  return load === 'torsion' ? Math.abs(t!) : Math.hypot(my!, mz!);
}

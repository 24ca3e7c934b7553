/** What a solved construct does under one load: stiffness, motion at the fracture, largest stresses, weakest place. */

import { fragmentsOf } from '@bonewright/bone';
import type { CompiledFrame } from '@bonewright/frame';
import { sizeOf } from '../loads/demand.ts';
import type { Case } from '../model/case-file.ts';
import { LOADS, type LoadFigures, type LoadName } from '../model/plan.ts';
import { RIM_POINTS, rimName } from '../to-frame/bone-part.ts';
import { bendingAxis } from '../to-frame/build.ts';
import { DISTAL_FACE, PROXIMAL_FACE } from '../to-frame/mesh.ts';
import { dot } from '../to-frame/vectors.ts';
import { worthOf } from './judge.ts';
import type { Place } from './places.ts';
import type { ConstructSolver, Solution } from './solver.ts';

const DEGREES = 180 / Math.PI;

export interface Weakest {
  readonly margin: number;
  /** Index into the solver's places. */
  readonly place: number;
}

/** The least margin over all places under a load. */
export function weakestUnder(solver: ConstructSolver, load: LoadName, solution: Solution): Weakest {
  let margin = Number.POSITIVE_INFINITY;
  let place = 0;
  solver.places.forEach((p, i) => {
    const worth = worthOf(p, forcesAt(solver, load, i), solution);
    if (worth.margin < margin) {
      margin = worth.margin;
      place = i;
    }
  });
  return { margin, place };
}

function forcesAt({ frame, places, placeMembers }: ConstructSolver, load: LoadName, place: number) {
  const member = LOADS.indexOf(load) * frame.members.length + placeMembers[place]!;
  return { all: frame.outputs.memberEnds, at: 12 * member + 6 * places[place]!.end };
}

/** Largest stress in MPa over the places of a kind; 0 where there is none. */
function peak(solver: ConstructSolver, load: LoadName, solution: Solution, kind: Place['kind']): number {
  return solver.places.reduce(
    (most, p, i) =>
      p.kind === kind ? Math.max(most, worthOf(p, forcesAt(solver, load, i), solution).stressMPa) : most,
    0,
  );
}

/** The figures of a load but for its margin. */
export function figuresOfLoad(
  patientCase: Case,
  solver: ConstructSolver,
  load: LoadName,
  solution: Solution,
): Omit<LoadFigures, 'margin'> {
  const gapMotionMm = rimMotion(solver.frame, load);
  const { openMm } = fragmentsOf(patientCase.bone.lengthMm, patientCase.fracture);
  return {
    stiffness: stiffness(solver.frame, load, solution),
    unit: load.startsWith('axial') ? 'N/mm' : 'N·mm/deg',
    gapMotionMm,
    gapStrainPercent: openMm > 0 ? (100 * gapMotionMm) / openMm : null,
    peakPinMPa: peak(solver, load, solution, 'pin'),
    peakImMPa: solution.figures.im ? peak(solver, load, solution, 'im') : null,
    peakColumnMPa: peak(solver, load, solution, 'column'),
    peakBoneMPa: peak(solver, load, solution, 'hole'),
  };
}

function motionOf(frame: CompiledFrame, load: LoadName, node: string): Float64Array {
  const at = 6 * (LOADS.indexOf(load) * frame.nodes.length + frame.nodes.indexOf(node));
  return frame.outputs.displacements.subarray(at, at + 6);
}

/** Secant stiffness between the bone's ends: N/mm of shortening, or N·mm a degree. */
export function stiffness(frame: CompiledFrame, load: LoadName, { figures, layout }: Solution): number {
  const size = sizeOf(figures.demand, load);
  const distal = motionOf(frame, load, 'distal');
  if (load.startsWith('axial')) return size / -distal[0]!;
  if (load === 'torsion') return size / (distal[3]! * DEGREES);
  const proximal = motionOf(frame, load, 'proximal');
  const turn = [3, 4, 5].map((i) => distal[i]! - proximal[i]!) as unknown as readonly [number, number, number];
  return size / (dot(turn, bendingAxis(load, layout.aboutDeg)) * DEGREES);
}

/** Largest relative motion of two points that face each other across the fracture, any direction. */
function rimMotion(frame: CompiledFrame, load: LoadName): number {
  const motions = Array.from({ length: RIM_POINTS }, (_, i) => {
    const a = motionOf(frame, load, rimName(PROXIMAL_FACE, i));
    const b = motionOf(frame, load, rimName(DISTAL_FACE, i));
    return Math.hypot(b[0]! - a[0]!, b[1]! - a[1]!, b[2]! - a[2]!);
  });
  return Math.max(...motions);
}

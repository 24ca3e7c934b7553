/** What a solved construct does under one load: stiffness, motion at the fracture, largest stresses, weakest place. */

import { fragmentsOf } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { CompiledFrame } from '@bonewright/frame';
import { eventOf, sizeOf } from '../loads/demand.ts';
import type { Case } from '../model/case-file.ts';
import { LOADS, type LoadFigures, type LoadName } from '../model/plan.ts';
import { RIM_POINTS, rimName } from '../to-frame/bone-part.ts';
import { bendingAxis } from '../to-frame/build.ts';
import { DISTAL_FACE, PROXIMAL_FACE } from '../to-frame/mesh.ts';
import { dot } from '../to-frame/vectors.ts';
import { stressAt } from './judge.ts';
import type { Place } from './places.ts';
import type { ConstructSolver, Solution } from './solver.ts';

const DEGREES = 180 / Math.PI;

export interface Weakest {
  readonly margin: number;
  readonly words: string;
}

/** The least margin over all places under a load, the frame's own buckling included. */
export function weakestUnder(solver: ConstructSolver, load: LoadName, solution: Solution): Weakest {
  const { places } = solver;
  const { sections, strengths } = solution;
  const forces = { all: solver.frame.outputs.memberEnds, at: 0 };
  let margin = Number.POSITIVE_INFINITY;
  let weakest = 0;
  for (let i = 0; i < places.length; i += 1) {
    forces.at = forcesAt(solver, load, i);
    const here = strengths[i]! / stressAt(places[i]!, forces, sections);
    if (here < margin) {
      margin = here;
      weakest = i;
    }
  }
  const buckling = load === 'axial-ball' ? bucklingBound(solver, solution) : Number.POSITIVE_INFINITY;
  return buckling < margin
    ? { margin: buckling, words: 'the frame buckling' }
    : { margin, words: places[weakest]!.words };
}

/**
 * Factor on the axial load with free ends that the frame bears without buckling, from below: two stiff fragments, all
 * that gives gathered in a hinge at the fracture, as stiff as the softer of both bendings; a share of that.
 * docs/theory/construct.md, "Buckling".
 */
export function bucklingBound({ frame, middleMm }: ConstructSolver, solution: Solution): number {
  const { lengthMm } = solution.figures.profile;
  const inPlane = stiffness(frame, 'bending-in-plane', solution);
  const across = stiffness(frame, 'bending-out-of-plane', solution);
  const hinge = Math.min(inPlane, across) * DEGREES;
  const hingeN = (hinge * lengthMm) / (middleMm * (lengthMm - middleMm));
  return (value('interface.buckling.share') * hingeN) / solution.figures.demand.axialN;
}

/** Where the six end forces of a place's member start in the frame's outputs. */
function forcesAt({ frame, places, placeMembers }: ConstructSolver, load: LoadName, place: number): number {
  const member = LOADS.indexOf(load) * frame.members.length + placeMembers[place]!;
  return 12 * member + 6 * places[place]!.end;
}

/** Largest stress in MPa over the places of a kind; 0 where there is none. */
function peak(solver: ConstructSolver, load: LoadName, { sections }: Solution, kind: Place['kind']): number {
  const all = solver.frame.outputs.memberEnds;
  return solver.places.reduce(
    (most, p, i) =>
      p.kind === kind ? Math.max(most, stressAt(p, { all, at: forcesAt(solver, load, i) }, sections)) : most,
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
    applied: {
      size: sizeOf(solution.figures.demand, load),
      unit: load.startsWith('axial') ? 'N' : 'N·mm',
      event: eventOf(patientCase, load),
    },
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
  const turn = [distal[3]! - proximal[3]!, distal[4]! - proximal[4]!, distal[5]! - proximal[5]!] as const;
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

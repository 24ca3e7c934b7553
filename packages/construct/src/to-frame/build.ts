/** A construct as a frame: the parts together, and the five load cases on it. The only bridge to the frame solver. */
import type { FrameModel, Freedom, Vec3, Vec6 } from '@bonewright/frame';
import { sizeOf } from '../loads/demand.ts';
import type { Case } from '../model/case-file.ts';
import type { Figures } from '../model/figures.ts';
import { LOADS, type LoadName } from '../model/plan.ts';
import { addBone, addFracture } from './bone-part.ts';
import { addCallus } from './callus-part.ts';
import { addIm } from './im-part.ts';
import type { Layout } from './layout.ts';
import type { Mesh } from './mesh.ts';
import { addColumns, addPins } from './pin-part.ts';
import { type FrameSink, modelSink } from './sink.ts';
import { radial } from './vectors.ts';

/** Adds every part, in an order that depends on the mesh only. */
export function buildParts(sink: FrameSink, patientCase: Case, mesh: Mesh, layout: Layout, figures: Figures): void {
  addBone(sink, mesh, figures);
  addFracture(sink, patientCase, figures);
  addCallus(sink, patientCase, figures);
  addColumns(sink, mesh, layout, figures);
  addPins(sink, mesh, layout, figures);
  addIm(sink, patientCase, mesh, layout, figures);
}

type Supports = Readonly<Record<string, readonly Freedom[]>>;

const FIXED: readonly Freedom[] = ['x', 'y', 'z', 'rx', 'ry', 'rz'];
const HELD_SIDEWAYS: readonly Freedom[] = ['y', 'z'];
const BALL: Supports = { proximal: ['x', 'y', 'z', 'rx'], distal: HELD_SIDEWAYS };

export const SUPPORTS: Readonly<Record<LoadName, Supports>> = {
  'axial-ball': BALL,
  'axial-guided': { proximal: FIXED, distal: ['y', 'z', 'rx', 'ry', 'rz'] },
  'bending-in-plane': BALL,
  'bending-out-of-plane': BALL,
  torsion: { proximal: FIXED, distal: HELD_SIDEWAYS },
};

/**
 * The axis about which a moment bends the bone in the plane of bone and column, or across it. In plane it closes the
 * frame on the column's side, so that the fracture opens on the other and its faces do not help.
 */
export function bendingAxis(load: LoadName, aboutDeg: number): Vec3 {
  const outward = radial(aboutDeg);
  return load === 'bending-in-plane' ? [0, -outward[2], outward[1]] : outward;
}

/** Forces and moments of a load case, by node. */
export function loadOf(load: LoadName, aboutDeg: number, figures: Figures): Readonly<Record<string, Vec6>> {
  const size = sizeOf(figures.demand, load);
  if (load.startsWith('axial')) return { distal: [-size, 0, 0, 0, 0, 0] };
  if (load === 'torsion') return { distal: [0, 0, 0, size, 0, 0] };
  const axis = bendingAxis(load, aboutDeg);
  const moment = (sign: number): Vec6 => [0, 0, 0, 0, sign * size * axis[1], sign * size * axis[2]];
  return { proximal: moment(-1), distal: moment(1) };
}

/** The frame of a construct with some of its load cases; all of them must stand on the same supports. */
export function frameModel(
  patientCase: Case,
  mesh: Mesh,
  layout: Layout,
  figures: Figures,
  loads: readonly LoadName[] = LOADS,
): FrameModel {
  const { sink, parts } = modelSink();
  buildParts(sink, patientCase, mesh, layout, figures);
  return {
    beam: 'timoshenko',
    buckling: false,
    ...parts,
    supports: SUPPORTS[loads[0]!],
    loads: Object.fromEntries(loads.map((load) => [load, loadOf(load, layout.aboutDeg, figures)])),
  };
}

/** The fragments as beams of oval rings along the bone's axis, and the ring of one-way contacts between their faces. */
import { fragmentsOf, ringProperties, sectionAt } from '@bonewright/bone';
import { value } from '@bonewright/evidence';
import type { Vec3 } from '@bonewright/frame';
import type { Case } from '../model/case-file.ts';
import type { Figures } from '../model/figures.ts';
import { type BoneNode, DISTAL_FACE, type Mesh, PROXIMAL_FACE } from './mesh.ts';
import type { FrameSink } from './sink.ts';

const MEDIAL: Vec3 = [0, 1, 0];

/** The bone's axis at `sMm`. */
export function axisAt({ profile }: Figures, sMm: number): Vec3 {
  const { offsetMm } = sectionAt(profile, sMm);
  return [sMm, offsetMm[0], offsetMm[1]];
}

export const boneMaterial = ({ boneYoungMPa }: Figures) => ({
  name: 'bone',
  E: boneYoungMPa,
  nu: value('bone.poisson'),
});

/** Adds both fragments, each piece with the section at its middle. */
export function addBone(sink: FrameSink, mesh: Mesh, figures: Figures): void {
  for (const fragment of [mesh.proximal, mesh.distal]) {
    for (const node of fragment) sink.node(node.name, axisAt(figures, node.sMm));
    for (const [i, to] of fragment.slice(1).entries()) addPiece(sink, fragment[i]!, to, figures);
  }
}

function addPiece(sink: FrameSink, from: BoneNode, to: BoneNode, figures: Figures): void {
  const { outerMm, canalMm } = sectionAt(figures.profile, (from.sMm + to.sMm) / 2);
  const section = { shape: 'ovalTube', odY: outerMm[0], odZ: outerMm[1], idY: canalMm[0], idZ: canalMm[1] } as const;
  sink.member(pieceName(to.name), from.name, to.name, section, boneMaterial(figures), MEDIAL);
}

/** Bone pieces bear the name of the node at their distal end. */
export const pieceName = (distalNode: string): string => `bone.${distalNode}`;

/** Points around each face of the fracture. */
export const RIM_POINTS = 8;
const RADIANS = Math.PI / 180;

export const rimName = (face: string, i: number): string => `${face}.${i + 1}`;

/**
 * Adds the rim points of both faces (at mid wall, on the oblique plane) and, where the faces can meet, a one-way
 * contact between each pair. The oblique plane leans in the medial plane; its line runs distally on the medial side.
 */
export function addFracture(sink: FrameSink, patientCase: Case, figures: Figures): void {
  const { fracture } = patientCase;
  const { proximal, distal, middleMm, facesMeet } = fragmentsOf(figures.profile.lengthMm, fracture);
  const ring = sectionAt(figures.profile, middleMm);
  const lean = Math.tan(fracture.obliquityDeg * RADIANS);
  const faces = [
    { name: PROXIMAL_FACE, at: axisAt(figures, proximal[1]) },
    { name: DISTAL_FACE, at: axisAt(figures, distal[0]) },
  ] as const;
  const stiffness = faceStiffness(ring, figures) / RIM_POINTS;
  const flat = Math.cos(fracture.obliquityDeg * RADIANS);
  const normal: Vec3 = [flat, -flat * lean, 0];
  for (let i = 0; i < RIM_POINTS; i += 1) {
    const angle = (2 * Math.PI * i) / RIM_POINTS;
    const y = ((ring.outerMm[0] + ring.canalMm[0]) / 4) * Math.cos(angle);
    const z = ((ring.outerMm[1] + ring.canalMm[1]) / 4) * Math.sin(angle);
    for (const { name, at } of faces) {
      sink.node(rimName(name, i), [at[0] + lean * y, at[1] + y, at[2] + z]);
      sink.rigid(rimName(name, i), name, rimName(name, i));
    }
    if (!facesMeet) continue;
    const [from, to] = [rimName(PROXIMAL_FACE, i), rimName(DISTAL_FACE, i)];
    sink.contact(`F.${i + 1}`, from, to, normal, figures.gapMm * flat, stiffness);
  }
}

/** Both faces pressed together: E A over the depth that gives way behind them. */
function faceStiffness(ring: ReturnType<typeof sectionAt>, { boneYoungMPa }: Figures): number {
  const width = (ring.outerMm[0] + ring.outerMm[1]) / 2;
  return (boneYoungMPa * ringProperties(ring).areaMm2) / (value('interface.fracture.depth') * width);
}

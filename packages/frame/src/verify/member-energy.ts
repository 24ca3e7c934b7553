/** Elastic energy of a member from its end forces: N, T and V constant along it, M linear. Any handbook. */
import { sectionProperties, shearCoefficient } from '../assemble/section.ts';
import type { FrameModel, LoadResult } from '../model/frame-model.ts';

export function memberEnergy(model: FrameModel, name: string, result: LoadResult): number {
  const member = model.members[name];
  const ends = result.members[name];
  const section = model.sections[member?.section ?? ''];
  const material = model.materials[member?.material ?? ''];
  const [a, b] = [model.nodes[member?.from ?? ''], model.nodes[member?.to ?? '']];
  if (!ends || !section || !material || !a || !b) throw new Error(`member ${name} is not whole`);
  const { areaMm2, iyMm4, izMm4, jMm4 } = sectionProperties(section);
  const L = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
  const { E, nu } = material;
  const G = E / (2 * (1 + nu));
  const [n, vy, vz, t, my1, mz1] = ends.from;
  const [, , , , my2, mz2] = ends.to;
  // A moment on the `to` end bends the other way than one on `from`; along the member M runs from -m1 to m2.
  const bending = (m1: number, m2: number) => (L / 6) * (m1 * m1 - m1 * m2 + m2 * m2);
  const shear = model.beam === 'timoshenko' ? shearCoefficient(section, nu) : 0;
  return (
    (n * n * L) / (2 * E * areaMm2) +
    (t * t * L) / (2 * G * jMm4) +
    bending(my1, my2) / (E * iyMm4) +
    bending(mz1, mz2) / (E * izMm4) +
    (shear > 0 ? ((vy * vy + vz * vz) * L) / (2 * shear * G * areaMm2) : 0)
  );
}

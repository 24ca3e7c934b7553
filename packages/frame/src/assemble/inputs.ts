/** The figures of a model as typed arrays, in the order of its names. */
import type { FrameInputs } from '../model/compiled-frame.ts';
import type { FrameModel } from '../model/frame-model.ts';
import { sectionProperties, shearCoefficient } from './section.ts';
import { nodeIndex } from './topology.ts';

/** Fills the arrays that `compileFrame` hands out from a sound model. */
export function readInputs(model: FrameModel): FrameInputs {
  const members = Object.values(model.members).map((member) => {
    const section = model.sections[member.section];
    const material = model.materials[member.material];
    if (!section || !material) throw new Error(`member without section ${member.section} or material`);
    const shear = model.beam === 'timoshenko' ? shearCoefficient(section, material.nu) : 0;
    return { ...sectionProperties(section), ...material, shear };
  });
  const springs = Object.values(model.springs);
  const contacts = Object.values(model.contacts);
  const sleeves = Object.values(model.sleeves);
  return {
    nodesMm: Float64Array.from(Object.values(model.nodes).flat()),
    youngMPa: Float64Array.from(members, (m) => m.E),
    shearModulusMPa: Float64Array.from(members, (m) => m.E / (2 * (1 + m.nu))),
    areaMm2: Float64Array.from(members, (m) => m.areaMm2),
    iyMm4: Float64Array.from(members, (m) => m.iyMm4),
    izMm4: Float64Array.from(members, (m) => m.izMm4),
    jMm4: Float64Array.from(members, (m) => m.jMm4),
    shearCoefficient: Float64Array.from(members, (m) => m.shear),
    springK: Float64Array.from(springs.flatMap((s) => s.k)),
    contactGapMm: Float64Array.from(contacts, (c) => c.gapMm),
    contactK: Float64Array.from(contacts, (c) => c.k),
    contactNormal: Float64Array.from(contacts.flatMap((c) => c.normal)),
    sleeveClearanceMm: Float64Array.from(sleeves, (s) => s.clearanceMm),
    sleeveK: Float64Array.from(sleeves, (s) => s.k),
    sleeveAxis: Float64Array.from(sleeves.flatMap((s) => s.axis)),
    loads: readLoads(model),
  };
}

function readLoads(model: FrameModel): Float64Array {
  const nodes = Object.keys(model.nodes);
  const indexOf = nodeIndex(nodes);
  const cases = Object.values(model.loads);
  const loads = new Float64Array(cases.length * nodes.length * 6);
  cases.forEach((load, i) => {
    for (const [node, vector] of Object.entries(load)) loads.set(vector, (i * nodes.length + indexOf(node)) * 6);
  });
  return loads;
}

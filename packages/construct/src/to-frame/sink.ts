/**
 * Where the parts of a frame go as they are built: into a model with names, or over the numbers of a compiled one.
 * Both take the same calls in the same order.
 */
import {
  type CompiledFrame,
  type FrameModel,
  type Section,
  sectionProperties,
  shearCoefficient,
  type Vec3,
  type Vec6,
} from '@bonewright/frame';

export interface Elastic {
  readonly name: string;
  readonly E: number;
  readonly nu: number;
}

export interface FrameSink {
  node(name: string, at: Vec3): void;
  member(name: string, from: string, to: string, section: Section, material: Elastic, yAxis?: Vec3): void;
  rigid(name: string, from: string, to: string): void;
  spring(name: string, from: string, to: string, k: Vec6): void;
  contact(name: string, from: string, to: string, normal: Vec3, gapMm: number, k: number): void;
  sleeve(name: string, inner: string, outer: string, axis: Vec3, clearanceMm: number, k: number): void;
}

type Parts = Pick<
  FrameModel,
  'nodes' | 'materials' | 'sections' | 'members' | 'rigids' | 'springs' | 'contacts' | 'sleeves'
>;
type Growing<T> = { [K in keyof T]: { -readonly [N in keyof T[K]]: T[K][N] } };

/** Collects a model's parts. A section bears its member's name. */
export function modelSink(): { readonly sink: FrameSink; readonly parts: Parts } {
  const parts: Growing<Parts> = {
    nodes: {},
    materials: {},
    sections: {},
    members: {},
    rigids: {},
    springs: {},
    contacts: {},
    sleeves: {},
  };
  const sink: FrameSink = {
    node: (name, at) => {
      parts.nodes[name] = at;
    },
    member: (name, from, to, section, { name: material, E, nu }, yAxis) => {
      parts.materials[material] = { E, nu };
      parts.sections[name] = section;
      parts.members[name] = { from, to, section: name, material, ...(yAxis ? { yAxis } : {}) };
    },
    rigid: (name, from, to) => {
      parts.rigids[name] = { from, to };
    },
    spring: (name, from, to, k) => {
      parts.springs[name] = { from, to, k };
    },
    contact: (name, from, to, normal, gapMm, k) => {
      parts.contacts[name] = { from, to, normal, gapMm, k };
    },
    sleeve: (name, inner, outer, axis, clearanceMm, k) => {
      parts.sleeves[name] = { inner, outer, axis, clearanceMm, k };
    },
  };
  return { sink, parts };
}

/** Writes over the numbers of a frame compiled from the same construct; names are taken to be the same. */
export function numberSink({ inputs }: CompiledFrame): FrameSink {
  let nodes = 0;
  let members = 0;
  let springs = 0;
  let contacts = 0;
  let sleeves = 0;
  return {
    node: (_name, at) => {
      inputs.nodesMm.set(at, 3 * nodes++);
    },
    member: (_name, _from, _to, section, { E, nu }) => {
      const properties = sectionProperties(section);
      inputs.youngMPa[members] = E;
      inputs.shearModulusMPa[members] = E / (2 * (1 + nu));
      inputs.areaMm2[members] = properties.areaMm2;
      inputs.iyMm4[members] = properties.iyMm4;
      inputs.izMm4[members] = properties.izMm4;
      inputs.jMm4[members] = properties.jMm4;
      inputs.shearCoefficient[members++] = shearCoefficient(section, nu);
    },
    rigid: () => {},
    spring: (_name, _from, _to, k) => {
      inputs.springK.set(k, 6 * springs++);
    },
    contact: (_name, _from, _to, normal, gapMm, k) => {
      inputs.contactNormal.set(normal, 3 * contacts);
      inputs.contactGapMm[contacts] = gapMm;
      inputs.contactK[contacts++] = k;
    },
    sleeve: (_name, _inner, _outer, axis, clearanceMm, k) => {
      inputs.sleeveAxis.set(axis, 3 * sleeves);
      inputs.sleeveClearanceMm[sleeves] = clearanceMm;
      inputs.sleeveK[sleeves++] = k;
    },
  };
}

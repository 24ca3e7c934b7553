/** A parsed JSON value to a frame model, or a refusal that names the thing and its JSON path. */
import { InputError } from '@bonewright/fault';
import { AXES, writeMemberAxes } from '../assemble/axes.ts';
import { sectionProperties } from '../assemble/section.ts';
import type { FrameModel, Freedom, Member, Vec3 } from './frame-model.ts';
import { readSection } from './read-section.ts';
import {
  readBoolean,
  readChoice,
  readDirection,
  readGroup,
  readList,
  readNotNegative,
  readNumber,
  readObject,
  readPositive,
  readText,
  readVec3,
  readVec6,
  refuseOtherKeys,
  under,
} from './read-values.ts';

const KEYS =
  'title source beam buckling nodes materials sections members rigids springs contacts sleeves supports loads';
const BEAMS = ['euler', 'timoshenko'] as const;
const FREEDOMS: readonly Freedom[] = ['x', 'y', 'z', 'rx', 'ry', 'rz'];

/** Checks a parsed JSON value; throws InputError at the first fault. Groups that are left out are empty. */
export function readFrame(value: unknown): FrameModel {
  const file = readObject(value, '');
  refuseOtherKeys(file, KEYS.split(' '), '');
  const nodes = readGroup(file.nodes, 'nodes', readVec3);
  const model: FrameModel = {
    title: file.title === undefined ? undefined : readText(file.title, 'title'),
    source: file.source === undefined ? undefined : readText(file.source, 'source'),
    beam: file.beam === undefined ? 'euler' : readChoice(file.beam, 'beam', BEAMS),
    buckling: file.buckling === undefined ? false : readBoolean(file.buckling, 'buckling'),
    nodes,
    materials: readGroup(file.materials, 'materials', readMaterial),
    sections: readGroup(file.sections, 'sections', readSection),
    members: readGroup(file.members, 'members', readMember),
    rigids: readGroup(file.rigids, 'rigids', (v, path) => readEnds(v, path, nodes, [])),
    springs: readGroup(file.springs, 'springs', (v, path) => readSpring(v, path, nodes)),
    contacts: readGroup(file.contacts, 'contacts', (v, path) => readContact(v, path, nodes)),
    sleeves: readGroup(file.sleeves, 'sleeves', (v, path) => readSleeve(v, path, nodes)),
    supports: readGroup(file.supports, 'supports', (v, path, node) => readSupport(v, path, node, nodes)),
    loads: readGroup(file.loads, 'loads', (v, path) => readLoad(v, path, nodes)),
  };
  if (Object.keys(nodes).length === 0) throw new InputError('the frame has no nodes', 'nodes', 'give at least one');
  if (Object.keys(model.loads).length === 0)
    throw new InputError('there is no load case', 'loads', 'give at least one');
  for (const [name, member] of Object.entries(model.members)) checkMember(model, name, member);
  return model;
}

function readMaterial(value: unknown, path: string): { readonly E: number; readonly nu: number } {
  const material = readObject(value, path);
  refuseOtherKeys(material, ['E', 'nu'], path);
  const nu = readNumber(material.nu, under(path, 'nu'));
  if (nu <= -1 || nu > 0.5) {
    throw new InputError(`Poisson's ratio ${nu} is not possible`, under(path, 'nu'), 'give one above -1, up to 0.5');
  }
  return { E: readPositive(material.E, under(path, 'E')), nu };
}

function readMember(value: unknown, path: string): Member {
  const member = readObject(value, path);
  refuseOtherKeys(member, ['from', 'to', 'section', 'material', 'yAxis'], path);
  const text = (key: string) => readText(member[key], under(path, key));
  const yAxis = member.yAxis === undefined ? {} : { yAxis: readDirection(member.yAxis, under(path, 'yAxis')) };
  return { from: text('from'), to: text('to'), section: text('section'), material: text('material'), ...yAxis };
}

/** The two different nodes that something joins; `more` are its other keys. */
function readEnds(value: unknown, path: string, nodes: object, more: readonly string[]) {
  const thing = readObject(value, path);
  refuseOtherKeys(thing, ['from', 'to', ...more], path);
  const from = readName(thing.from, under(path, 'from'), nodes, 'node');
  const to = readName(thing.to, under(path, 'to'), nodes, 'node');
  refuseSame(from, to, path);
  return { from, to };
}

function readSpring(value: unknown, path: string, nodes: object) {
  const spring = readObject(value, path);
  refuseOtherKeys(spring, ['from', 'to', 'k'], path);
  const from = readName(spring.from, under(path, 'from'), nodes, 'node');
  const to = spring.to === null ? null : readName(spring.to, under(path, 'to'), nodes, 'node');
  refuseSame(from, to, path);
  const k = readVec6(spring.k, under(path, 'k'));
  k.forEach((stiffness, i) => {
    readNotNegative(stiffness, under(under(path, 'k'), String(i)));
  });
  return { from, to, k };
}

function readContact(value: unknown, path: string, nodes: object) {
  const ends = readEnds(value, path, nodes, ['normal', 'gapMm', 'k']);
  const contact = readObject(value, path);
  return {
    ...ends,
    normal: readDirection(contact.normal, under(path, 'normal')),
    gapMm: readNumber(contact.gapMm, under(path, 'gapMm')),
    k: readPositive(contact.k, under(path, 'k')),
  };
}

function readSleeve(value: unknown, path: string, nodes: object) {
  const sleeve = readObject(value, path);
  refuseOtherKeys(sleeve, ['inner', 'outer', 'axis', 'clearanceMm', 'k'], path);
  const inner = readName(sleeve.inner, under(path, 'inner'), nodes, 'node');
  const outer = readName(sleeve.outer, under(path, 'outer'), nodes, 'node');
  refuseSame(inner, outer, path);
  return {
    inner,
    outer,
    axis: readDirection(sleeve.axis, under(path, 'axis')),
    clearanceMm: readNotNegative(sleeve.clearanceMm, under(path, 'clearanceMm')),
    k: readPositive(sleeve.k, under(path, 'k')),
  };
}

function readSupport(value: unknown, path: string, node: string, nodes: object): readonly Freedom[] {
  readName(node, path, nodes, 'node');
  return readList(value, path).map((freedom, i) => readChoice(freedom, under(path, String(i)), FREEDOMS));
}

function readLoad(value: unknown, path: string, nodes: object) {
  return readGroup(value, path, (vector, at, node) => {
    readName(node, at, nodes, 'node');
    return readVec6(vector, at);
  });
}

function readName(value: unknown, path: string, known: object, kind: string): string {
  const name = readText(value, path);
  if (Object.hasOwn(known, name)) return name;
  const some = Object.keys(known).slice(0, 6).join(', ');
  throw new InputError(`there is no ${kind} "${name}"`, path, some ? `use one of ${some}` : `give the ${kind}s first`);
}

function refuseSame(from: string, to: string | null, path: string): void {
  if (from === to) throw new InputError(`both ends are the node "${from}"`, path, 'join two different nodes');
}

/** Names, length, axes, and figures that a computer can hold. */
function checkMember(model: FrameModel, name: string, member: Member): void {
  const path = `members.${name}`;
  const at = (end: 'from' | 'to'): Vec3 => found(model.nodes, member[end], `${path}.${end}`, 'node');
  const section = sectionProperties(found(model.sections, member.section, `${path}.section`, 'section'));
  const { E } = found(model.materials, member.material, `${path}.material`, 'material');
  const ends = Float64Array.of(...at('from'), ...at('to'));
  const yAxis = Float64Array.from(member.yAxis ?? [0, 0, 0]);
  const lengthMm = writeMemberAxes(new Float64Array(AXES), 0, ends, 0, 3, yAxis, 0, name);
  const stiffness = [(E * section.areaMm2) / lengthMm, (E * (section.iyMm4 + section.izMm4)) / lengthMm ** 3];
  if (stiffness.every(Number.isFinite)) return;
  throw new InputError(`the stiffness of member "${name}" is too large a number`, path, 'check its sizes and units');
}

function found<T>(group: Readonly<Record<string, T>>, name: string, path: string, kind: string): T {
  const value = group[readName(name, path, group, kind)];
  if (value === undefined) throw new Error(`${kind} "${name}" was checked and is not there`);
  return value;
}

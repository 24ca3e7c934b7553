/** Bad input is refused with one line that names the thing and its JSON path. */
import { InputError } from '@bonewright/fault';
import { describe, expect, test } from 'vitest';
import { readFrame } from './read-frame.ts';

const GOOD = {
  title: '',
  source: '',
  beam: 'euler',
  buckling: false,
  nodes: { A: [0, 0, 0], B: [12, 0, 0], C: [12, 3, 0] },
  materials: { steel: { E: 193000, nu: 0.3 } },
  sections: {
    wire: { shape: 'round', od: 1.6 },
    bone: { shape: 'tube', od: 6, id: 4 },
    oval: { shape: 'ovalTube', odY: 6, odZ: 5, idY: 4, idZ: 3.4 },
    any: { shape: 'properties', A: 1, Iy: 1, Iz: 1, J: 1 },
  },
  members: { m1: { from: 'A', to: 'B', section: 'wire', material: 'steel', yAxis: [0, 1, 0] } },
  rigids: { r1: { from: 'B', to: 'C' } },
  springs: { s1: { from: 'A', to: null, k: [1, 1, 0, 0, 0, 0] } },
  contacts: { c1: { from: 'A', to: 'C', normal: [1, 0, 0], gapMm: 0.5, k: 50000 } },
  sleeves: { t1: { inner: 'A', outer: 'C', axis: [1, 0, 0], clearanceMm: 0.2, k: 20000 } },
  supports: { A: ['x', 'y', 'z', 'rx', 'ry', 'rz'] },
  loads: { push: { B: [0, 0, -10, 0, 0, 0] } },
};

/** GOOD with the value at a dotted path replaced (undefined takes it away). */
function withValue(path: string, value: unknown): unknown {
  const copy: unknown = structuredClone(GOOD);
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  const holder = keys.reduce((at: unknown, key) => Reflect.get(Object(at), key), copy);
  if (value === undefined) Reflect.deleteProperty(Object(holder), last);
  else Reflect.set(Object(holder), last, value);
  return copy;
}

function refusal(value: unknown): InputError {
  try {
    readFrame(value);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('it was taken');
}

test('the contract example is taken, and so is one with the optional parts left out', () => {
  expect(readFrame(GOOD).members.m1?.section).toBe('wire');
  const least = readFrame({ nodes: { A: [0, 0, 0] }, supports: { A: ['x'] }, loads: { none: {} } });
  expect(least).toMatchObject({ beam: 'euler', buckling: false, members: {}, sleeves: {} });
});

test('a note in text is let pass', () => {
  expect(readFrame({ ...GOOD, note: 'measured on Monday' }).nodes.A).toEqual([0, 0, 0]);
});

describe('refused, naming what and where', () => {
  test.each<[string, string, unknown, string]>([
    ['unknown node', 'members.m1.to', 'Bx', 'members.m1.to'],
    ['a name that every object has', 'members.m1.to', 'toString', 'members.m1.to'],
    ['missing node', 'members.m1.to', undefined, 'members.m1.to'],
    ['unknown section', 'members.m1.section', 'shin', 'members.m1.section'],
    ['unknown material', 'members.m1.material', 'tin', 'members.m1.material'],
    ['unknown node of a rigid', 'rigids.r1.from', 'Q', 'rigids.r1.from'],
    ['unknown node of a spring', 'springs.s1.to', 'Q', 'springs.s1.to'],
    ['unknown node of a contact', 'contacts.c1.from', 'Q', 'contacts.c1.from'],
    ['unknown node of a sleeve', 'sleeves.t1.outer', 'Q', 'sleeves.t1.outer'],
    ['unknown supported node', 'supports.Q', ['x'], 'supports.Q'],
    ['unknown loaded node', 'loads.push.Q', [0, 0, 0, 0, 0, 0], 'loads.push.Q'],
    ['no length', 'nodes.B', [0, 0, 0], 'members.m1'],
    ['text for a number', 'nodes.B.0', '12', 'nodes.B.0'],
    ['NaN', 'sections.wire.od', Number.NaN, 'sections.wire.od'],
    ['infinite', 'materials.steel.E', Number.POSITIVE_INFINITY, 'materials.steel.E'],
    ['too few numbers', 'nodes.B', [1, 2], 'nodes.B'],
    ['negative size', 'sections.wire.od', -1.6, 'sections.wire.od'],
    ['size 0', 'sections.wire.od', 0, 'sections.wire.od'],
    ['bore wider than its tube', 'sections.bone.id', 6.5, 'sections.bone.id'],
    ['bore as wide as its tube', 'sections.oval.idZ', 5, 'sections.oval.idZ'],
    ['negative bore', 'sections.bone.id', -1, 'sections.bone.id'],
    ['negative property', 'sections.any.J', -1, 'sections.any.J'],
    ['negative modulus', 'materials.steel.E', -1, 'materials.steel.E'],
    ["impossible Poisson's ratio", 'materials.steel.nu', 0.7, 'materials.steel.nu'],
    ['negative spring', 'springs.s1.k.1', -1, 'springs.s1.k.1'],
    ['negative clearance', 'sleeves.t1.clearanceMm', -0.1, 'sleeves.t1.clearanceMm'],
    ['negative contact stiffness', 'contacts.c1.k', -1, 'contacts.c1.k'],
    ['a normal of no length', 'contacts.c1.normal', [0, 0, 0], 'contacts.c1.normal'],
    ['yAxis along the member', 'members.m1.yAxis', [2, 0, 0], 'members.m1.yAxis'],
    ['a spring from a node to itself', 'springs.s1.to', 'A', 'springs.s1'],
    ['unknown beam', 'beam', 'shell', 'beam'],
    ['unknown shape', 'sections.wire.shape', 'square', 'sections.wire.shape'],
    ['unknown freedom', 'supports.A.2', 'up', 'supports.A.2'],
    ['a misspelt group', 'suports', { A: ['x'] }, 'suports'],
    ['a misspelt size', 'sections.wire.diameter', 2, 'sections.wire.diameter'],
    ['a list for an object', 'members', [], 'members'],
    ['no nodes', 'nodes', {}, 'rigids.r1.from'],
    ['no load case', 'loads', {}, 'loads'],
    ['buckling not yes or no', 'buckling', 1, 'buckling'],
    ['stiffness beyond numbers', 'sections.wire.od', 1e200, 'members.m1'],
  ])('%s', (_, path, value, named) => {
    expect(refusal(withValue(path, value)).path).toBe(named);
  });

  test('what is not an object at all', () => {
    for (const value of [null, undefined, 3, 'frame', []]) expect(refusal(value).what).toContain('object');
  });

  test('the line names a member and the name that is missing', () => {
    const { message } = refusal(withValue('members.m1.section', 'shin'));
    expect(message).toContain('shin');
    expect(message).toContain('m1');
  });
});

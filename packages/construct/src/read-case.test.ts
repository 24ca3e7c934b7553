import { InputError } from '@bonewright/fault';
import { expect, test } from 'vitest';
import squirrel from '../cases/solid/squirrel-tibia.json' with { type: 'json' };
import type { CaseFile } from './model/case-file.ts';
import { readCase } from './read-case.ts';

type File = CaseFile & { drawer: { pins: object[] } };

/** The sound case with one edit. */
function edited(edit: (file: File) => void): unknown {
  const file: File = JSON.parse(JSON.stringify(squirrel));
  edit(file);
  return file;
}

function faultOf(file: unknown): InputError {
  try {
    readCase(file);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('it was accepted');
}

/** The sound case with the value at a dotted path replaced. */
const set = (path: string, to: unknown) =>
  edited((file) => {
    const keys = path.split('.');
    const last = keys.pop()!;
    const holder = keys.reduce<object>((at, key) => Object.entries(at).find(([name]) => name === key)![1], file);
    Object.assign(holder, { [last]: to });
  });

test('the case of the contract is read, defaults filled in', () => {
  const patientCase = readCase(squirrel);
  expect(patientCase.bone.stations).toHaveLength(9);
  expect(patientCase.construct?.grip).toBe('bonded');
  expect(readCase(set('samples', undefined)).samples).toBe(300);
});

test('keys that are not ours are left alone', () => {
  expect(readCase(edited((file) => Object.assign(file, { note: 'seen at night' })))).toBeDefined();
});

test.each([
  ['patient.massG', 0],
  ['patient.massG', '300'],
  ['patient.massG', null],
  ['patient.species', ''],
  ['bone.lengthMm', -44],
  ['bone.stations', []],
  ['bone.stations.3.sMm', 11],
  ['bone.stations.3.sMm', 70],
  ['bone.stations.2.outerMm', [3.4]],
  ['bone.stations.2.outerMm.1', -3],
  ['bone.stations.2.canalMm.0', 3.4],
  ['fracture.toMm', 20],
  ['fracture.toMm', 50],
  ['fracture.fromMm', 0],
  ['fracture.gapMm', 1.5],
  ['fracture.obliquityDeg', 90],
  ['keepOut', { proximalMm: 30, distalMm: 20 }],
  ['corridors.0.aboutDeg', [40, -35]],
  ['corridors.0.toMm', 1],
  ['softTissueMm.1.sMm', 0],
  ['drawer.pins.0.material', 'cheese'],
  ['drawer.pins.0.kind', 'screw'],
  ['drawer.pins.0.count', 1.5],
  ['drawer.columns.0.diameterMm', 0],
  ['construct.pins', []],
  ['construct.pins.2.drawerId', 'none'],
  ['construct.pins.2.sMm', 45],
  ['construct.pins.2.tiltDeg', 80],
  ['construct.column.drawerId', 'none'],
  ['construct.im', { drawerId: 'none' }],
  ['construct.grip', 'glued'],
  ['samples', 5],
  ['seed', 1.5],
])('%s = %j is refused where it stands, with what to do', (path, to) => {
  const error = faultOf(set(path, to));
  expect(error.path.startsWith(path.split('.').slice(0, 2).join('.'))).toBe(true);
  expect(error.hint).not.toBe('');
});

test('the words name the thing, the value and the way out', () => {
  expect(faultOf(set('bone.stations.2.canalMm.0', 3.6)).message).toBe(
    'canal 3.6 mm is as wide as its bone, 3.4 mm; at bone.stations.2.canalMm.0; make it narrower, or null',
  );
  expect(faultOf(set('patient.massG', '300')).message).toBe(
    '"massG" is not right, it is "300"; at patient.massG; give a number',
  );
  expect(faultOf(set('construct.pins.2.drawerId', 'x')).message).toBe(
    '"x" is not in the drawer; at construct.pins.2.drawerId; drawer.pins holds pin',
  );
});

test('two drawer entries of one id are refused', () => {
  const twice = edited((file) => {
    file.drawer.pins.push(file.drawer.pins[0]!);
  });
  expect(faultOf(twice).path).toBe('drawer.pins.1.id');
});

test.each([
  [{ kind: 'threaded-end' }, 'drawer.pins.0.coreDiameterMm'],
  [{ kind: 'threaded-centre', coreDiameterMm: 1.2 }, 'drawer.pins.0.coreDiameterMm'],
  [{ kind: 'needle' }, 'drawer.pins.0.gauge'],
  [{ kind: 'needle', gauge: 17 }, 'drawer.pins.0.gauge'],
  [{ kind: 'needle', gauge: 14 }, 'drawer.pins.0.diameterMm'],
])('a pin %j lacks what its kind needs', (more, path) => {
  expect(faultOf(edited((file) => Object.assign(file.drawer.pins[0]!, more))).path).toBe(path);
});

test('a material without figures passes where the drawer brings its own', () => {
  const own = edited((file) => Object.assign(file.drawer.pins[0]!, { material: 'niobium', yieldMPa: 500 }));
  expect(readCase(own).drawer.pins[0]!.yieldMPa).toBe(500);
});

test('what is no case at all is refused', () => {
  for (const nothing of [null, 3, 'case', [], {}]) expect(faultOf(nothing)).toBeInstanceOf(InputError);
});

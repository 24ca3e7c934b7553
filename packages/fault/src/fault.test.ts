import { expect, test } from 'vitest';
import { faultLine, InputError } from './index.ts';

test('the line says what, where and what to do', () => {
  const error = new InputError(
    'bore 6.2 mm is wider than its tube 6 mm',
    'sections.bone.id',
    'make "id" smaller than "od"',
  );
  expect(faultLine(error, 'rig.json')).toBe(
    'bore 6.2 mm is wider than its tube 6 mm, at rig.json sections.bone.id; make "id" smaller than "od"',
  );
});

test('a line break in a value never makes a second line', () => {
  expect(faultLine(new InputError('node "a\nb" is unknown'))).toBe('node "a b" is unknown');
});

import { InputError } from '@bonewright/fault';
import { expect, test } from 'vitest';
import { readJson } from './read-json.ts';

const read = (text: string) => readJson(new TextEncoder().encode(text));

function fault(text: string | Uint8Array): InputError {
  try {
    if (typeof text === 'string') read(text);
    else readJson(text);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('it was accepted');
}

test('plain JSON is read as JSON.parse reads it', () => {
  const text = '{"a":[1,-2.5e3,null,true,"x\\u00e9"],"b":{"a":1}}';
  expect(read(text)).toEqual(JSON.parse(text));
});

test('the same key twice in one object is refused with its path; in two objects it is fine', () => {
  expect(fault('{"nodes":{"A":[0],"B":[1],"A":[2]}}').message).toBe(
    'the key "A" stands twice; at nodes.A; keep one of them',
  );
  expect(read('{"a":{"k":1},"b":{"k":1}}')).toEqual({ a: { k: 1 }, b: { k: 1 } });
});

test('a number beyond the range of a double is refused, not read as Infinity', () => {
  expect(fault('{"a":[0,1e999]}').path).toBe('a.1');
});

test.each([
  ['', 'the file is empty'],
  ['not json', 'this is not JSON'],
  ['{"a":1,}', 'this is not JSON'],
  ['{"a":NaN}', 'this is not JSON'],
  ['// note\n{}', 'this is not JSON'],
  ['{"a":1} {"b":2}', 'this is not JSON'],
])('%j is refused with a place', (text, what) => {
  const error = fault(text);
  expect(error.what).toContain(what);
  expect(error.path).toMatch(/^byte \d+ \(line \d+, column \d+\)$/);
});

test('bytes that are not UTF-8 and endless nesting are refused', () => {
  expect(fault(new Uint8Array([0xff, 0xfe, 0x00])).what).toBe('this is not text in UTF-8');
  expect(fault('['.repeat(100_000)).what).toContain('nested deeper');
});

import { expect, test } from 'vitest';
import { withNames } from './naming.ts';
import { START_DRAWER } from './start-set.ts';

const ids = (drawer: typeof START_DRAWER) => drawer.pins.map(({ id }) => id);

test('a drawer kept as it was keeps every name, so that plans still find their pins', () => {
  expect(withNames(START_DRAWER, START_DRAWER)).toEqual(START_DRAWER);
  const counted = { ...START_DRAWER, pins: START_DRAWER.pins.map((pin) => ({ ...pin, count: 1 })) };
  expect(ids(withNames(counted, START_DRAWER))).toEqual(ids(START_DRAWER));
});

test('a changed size gets the name of that size', () => {
  const pins = START_DRAWER.pins.map((pin, i) => (i === 0 ? { ...pin, diameterMm: 0.65 } : pin));
  expect(ids(withNames({ ...START_DRAWER, pins }, START_DRAWER))[0]).toBe('wire 0.65');
});

test('two rows alike have two names', () => {
  const [first] = START_DRAWER.pins;
  const pins = [first!, { ...first!, id: 'pin-1' }];
  expect(ids(withNames({ ...START_DRAWER, pins }, START_DRAWER))).toEqual(['wire 0.6', 'wire 0.6 (2)']);
});

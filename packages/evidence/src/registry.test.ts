import { describe, expect, test } from 'vitest';
import { curve, defineSet, type Entry, entries, entry, value } from './index.ts';

const SOUND: Entry = {
  id: 'steel.made-up',
  name: 'a figure',
  unit: 'MPa',
  value: 2,
  low: 1,
  high: 3,
  spread: 'range',
  appliesTo: 'nothing',
  source: { title: 'this test' },
  status: 'common practice',
};

describe('a set refuses', () => {
  test.each<[string, Partial<Entry>, string]>([
    ['an entry without a source', { source: { title: '' } }, 'it has no source'],
    ['one without a unit', { unit: '' }, 'it has no unit'],
    ['a value outside its own range', { value: 4 }, 'its value lies outside its range'],
    ['a figure that is not finite', { high: Number.POSITIVE_INFINITY }, 'a figure is not finite'],
    ['an id that is not dotted', { id: 'Steel' }, 'its id is not dotted lower case'],
  ])('%s', (_, change, why) => {
    expect(() => defineSet([{ ...SOUND, ...change }])).toThrow(why);
  });
  test('a sound one is taken and frozen', () => {
    expect(Object.isFrozen(defineSet([SOUND]))).toBe(true);
  });
});

describe('the registry', () => {
  test('holds each id once', () => {
    const ids = entries.map((e) => e.id);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  });
  test('a conflict points both ways and says why this one is the default', () => {
    for (const { id, conflicts } of entries) {
      for (const other of conflicts?.ids ?? [])
        expect(entry(other).conflicts?.ids, `${other} about ${id}`).toContain(id);
      if (conflicts) expect(conflicts.why, id).not.toBe('');
    }
  });
  test('an exact figure has no range', () => {
    for (const { id, spread, low, high } of entries) if (spread === 'exact') expect(low, id).toBe(high);
  });
  test('an unknown id is a fault of ours', () => {
    expect(() => value('steel.no-such-figure')).toThrow('no evidence entry');
    expect(() => curve('hole.no-such-load')).toThrow('no evidence curve');
  });
});

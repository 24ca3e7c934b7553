import { entry } from '@bonewright/evidence';
import { expect, test } from 'vitest';
import { releaseLimits } from './limits.ts';
import { readinessFor } from './readiness.ts';

const ids = (species: string) => readinessFor(species).map(({ id }) => id);

test('a hedgehog curls, an owl flies and hunts, a squirrel climbs; the rest is asked of all', () => {
  expect(ids('European hedgehog')).toContain('curls-fully');
  expect(ids('tawny owl')).toContain('flies');
  expect(readinessFor('barn owl').find(({ id }) => id === 'natural-food')?.asks).toMatch(/live prey/);
  expect(ids('red squirrel')).toContain('moves-as-its-kind');
  for (const asked of ['implants-out', 'drugs-out', 'site-safe', 'young-asked'])
    for (const species of ['hedgehog', 'tawny owl', 'rabbit']) expect(ids(species)).toContain(asked);
});

test('no line is asked twice, and each is a name that the record takes', () => {
  for (const species of ['hedgehog', 'tawny owl', 'rabbit']) {
    expect(new Set(ids(species)).size).toBe(ids(species).length);
    for (const id of ids(species)) expect(id).toMatch(/^[a-z][a-z0-9-]{1,60}$/);
  }
});

test('sources disagree on hedgehogs: 450 or 600 g, 0 or 8 degrees; both are kept, each names the other', () => {
  const [mass, night] = releaseLimits('hedgehog');
  expect(mass?.sources.map(({ value }) => value)).toEqual([450, 600]);
  expect(night?.sources.map(({ value }) => value)).toEqual([0, 8]);
  for (const limit of releaseLimits('hedgehog'))
    for (const { id, conflicts } of limit.sources)
      expect(conflicts?.ids.map((other) => entry(other).conflicts?.ids)).toEqual([[id]]);
  expect(releaseLimits('rabbit')).toEqual([]);
});

import { outcomeSeries } from '@bonewright/evidence';
import { expect, test } from 'vitest';
import { lawBeside, seriesBeside } from './beside-case.ts';

test('a tawny owl with a broken tibiotarsus: the series of raptors first, rabbits never', () => {
  const beside = seriesBeside({ species: 'Tawny owl', group: 'birds', bone: 'tibiotarsus' });
  expect(beside[0]).toMatchObject({ nearness: 'same species and bone' });
  expect(beside[0]?.series.id).toBe('outcome.raptor.tibiotarsus.tie-in');
  expect(beside.some(({ series }) => series.group === 'mammals')).toBe(false);
  expect(beside.some(({ series }) => series.bones.includes('humerus'))).toBe(false);
});

test('a red squirrel has no series of its own, and the all-casualty figures come last', () => {
  const beside = seriesBeside({ species: 'red squirrel', group: 'mammals', bone: 'tibia' });
  expect(beside.every(({ nearness }) => nearness === 'same group' || nearness === 'all casualties')).toBe(true);
  expect(beside.at(-1)?.series.id).toBe('outcome.casualties.all');
});

test('every series says how many, or that it was not read, and who says so', () => {
  for (const { n, outcomes, source } of outcomeSeries) {
    expect(n === null || n > 0).toBe(true);
    expect(outcomes.length).toBeGreaterThan(0);
    expect(source.title).not.toBe('');
  }
});

test('grey squirrels: their own question of law comes first; birds get the birds’', () => {
  expect(lawBeside({ species: 'grey squirrel', group: 'mammals', bone: 'tibia' })[0]?.id).toBe('law.uk.grey-squirrel');
  const owl = lawBeside({ species: 'tawny owl', group: 'birds', bone: 'ulna' }).map(({ id }) => id);
  expect(owl).toContain('law.gb.disabled-bird');
  expect(owl).not.toContain('law.uk.grey-squirrel');
});

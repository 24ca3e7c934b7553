import { expect, test } from 'vitest';
import { PIN_SITE_SCALES, pinSiteScale, tellsVet } from './scales.ts';

test('plain words unless one was chosen; what is known only from memory is never it, and says so', () => {
  expect(pinSiteScale(null).id).toBe('plain-words');
  expect(pinSiteScale('no-such-scale').id).toBe('plain-words');
  const remembered = PIN_SITE_SCALES.filter(({ status }) => status === 'memory');
  expect(remembered.map(({ name }) => name)).toEqual([expect.stringContaining('from memory, unverified')]);
});

test('any Bad, infected or second grade tells a vet; good and calm do not', () => {
  expect(tellsVet('good-bad-ugly', 'bad')).toBe(true);
  expect(tellsVet('modified-gordon', 'bad')).toBe(true);
  expect(tellsVet('calm-irritated-infected', 'infected')).toBe(true);
  expect(tellsVet('checketts-otterburn', '2')).toBe(true);
  expect(tellsVet('good-bad-ugly', 'good')).toBe(false);
  expect(tellsVet('plain-words', 'dry')).toBe(false);
});

test('scales whose grades nobody read are not here', () => {
  expect(JSON.stringify(PIN_SITE_SCALES)).not.toMatch(/Dahl|Saleh|Oxford|MON\b/);
});

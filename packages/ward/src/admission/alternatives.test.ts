import { expect, test } from 'vitest';
import { alternativesFor } from './alternatives.ts';

test('a hedgehog is offered the dispute on fixators and on amputation, an owl neither', () => {
  const words = (species: string) =>
    alternativesFor(species)
      .flatMap(({ known }) => known)
      .join(' ');
  expect(words('Hedgehog')).toMatch(/curling[\s\S]*No consensus/);
  expect(words('tawny owl')).not.toMatch(/curling|foreleg/);
  expect(words('tawny owl')).toMatch(/Coracoid/);
});

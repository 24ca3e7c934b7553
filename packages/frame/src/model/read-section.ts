/** A section's sizes, checked: above 0, and a bore narrower than its tube. */
import { InputError } from '@bonewright/fault';
import type { Section } from './frame-model.ts';
import { readChoice, readNotNegative, readObject, readPositive, refuseOtherKeys, under } from './read-values.ts';

const SIZES = {
  round: ['od'],
  tube: ['od', 'id'],
  ovalTube: ['odY', 'odZ', 'idY', 'idZ'],
  properties: ['A', 'Iy', 'Iz', 'J'],
} as const;
const SHAPES = ['round', 'tube', 'ovalTube', 'properties'] as const;

/** Checks one entry of `sections`; throws InputError. */
export function readSection(value: unknown, path: string): Section {
  const section = readObject(value, path);
  const shape = readChoice(section.shape, under(path, 'shape'), SHAPES);
  refuseOtherKeys(section, ['shape', ...SIZES[shape]], path);
  const positive = (key: string) => readPositive(section[key], under(path, key));
  const notNegative = (key: string) => readNotNegative(section[key], under(path, key));
  const bore = (key: string, odMm: number) => readBore(section[key], odMm, under(path, key));
  switch (shape) {
    case 'round':
      return { shape, od: positive('od') };
    case 'tube': {
      const od = positive('od');
      return { shape, od, id: bore('id', od) };
    }
    case 'ovalTube': {
      const [odY, odZ] = [positive('odY'), positive('odZ')];
      return { shape, odY, odZ, idY: bore('idY', odY), idZ: bore('idZ', odZ) };
    }
    case 'properties':
      return { shape, A: notNegative('A'), Iy: notNegative('Iy'), Iz: notNegative('Iz'), J: notNegative('J') };
  }
}

function readBore(value: unknown, odMm: number, path: string): number {
  const id = readNotNegative(value, path);
  if (id < odMm) return id;
  throw new InputError(`the bore ${id} mm is as wide as its tube ${odMm} mm, or wider`, path, 'make it smaller');
}

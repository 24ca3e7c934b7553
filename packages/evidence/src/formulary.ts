/** All published doses, drugs, volume limits and syringes of the sets in `sets/doses/`. */
import type { DoseFigure, Drug } from './dose-figure.ts';
import { birdDoses } from './sets/doses/bird.ts';
import { drugs as drugSet } from './sets/doses/drugs.ts';
import { emergencyDoses } from './sets/doses/emergency.ts';
import { foxDoses } from './sets/doses/fox.ts';
import { hedgehogDoses } from './sets/doses/hedgehog.ts';
import { rabbitDoses } from './sets/doses/rabbit.ts';
import { squirrelDoses } from './sets/doses/squirrel.ts';

export { syringes } from './sets/doses/syringes.ts';
export { volumeLimits } from './sets/doses/volumes.ts';

/** Every published or recalled dose, in the order of the sets. */
export const doseFigures: readonly DoseFigure[] = [
  ...hedgehogDoses,
  ...rabbitDoses,
  ...squirrelDoses,
  ...foxDoses,
  ...birdDoses,
  ...emergencyDoses,
];

export const drugs: readonly Drug[] = drugSet;

const figureById = new Map(doseFigures.map((f) => [f.id, f]));
const drugById = new Map(drugs.map((d) => [d.id, d]));

/** The figure of that id; null where this version knows none. */
export const doseFigure = (id: string): DoseFigure | null => figureById.get(id) ?? null;

/** The drug of that id; null for one that is not in the sets: it can be dosed all the same. */
export const drugOf = (id: string): Drug | null => drugById.get(id) ?? null;

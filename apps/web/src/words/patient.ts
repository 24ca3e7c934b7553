/** How a patient is named on every page. */
import { figure } from '../plan/words.ts';

/** A number and its unit never part. */
const NO_BREAK = '\u00a0';
const LARGE_G = 1000;

/** `310 g`, `1.4 kg`; null where it has not been weighed. */
export function massWords(massG: number | null): string {
  if (massG === null) return 'not weighed';
  if (massG < LARGE_G) return `${figure(massG, massG % 1 === 0 ? 0 : 1)}${NO_BREAK}g`;
  return `${figure(massG / LARGE_G, massG % 100 === 0 ? 1 : 2)}${NO_BREAK}kg`;
}

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

export function ageAndSex(ageClass: string, sex: string): string {
  const known = [ageClass, sex === 'unknown' ? 'sex unknown' : sex].filter(Boolean);
  return known.join(sex === 'unknown' ? ', ' : ' ');
}

/** How an entry of the evidence registry is said: its figure, its unit, its source, and whether anybody read it there. */
import type { Source, Status } from '@bonewright/evidence';

export const KNOWN: Readonly<Record<Status, string>> = {
  seen: 'seen in the source',
  memory: 'from memory, nobody has looked it up',
  computed: 'computed here',
  'common practice': 'common practice, no source',
};

/** With a space before it; nothing for a plain ratio. */
export const unitWords = (unit: string): string => (unit === '1' ? '' : unit === 'degC' ? ' °C' : ` ${unit}`);

export const sourceWords = ({ title, place, year, doi }: Source): string =>
  [title, place, year, doi && `doi ${doi}`].filter(Boolean).join(', ');

/** The address at which that entry can be read. */
export const numberAddress = (id: string): string => `/numbers#${id}`;

/** Where in a text the words stand that were asked for. */
import { foundIn } from '@bonewright/casebook';

export interface Part {
  readonly part: string;
  readonly isFound: boolean;
}

/** The text in parts, whole words that were asked for apart from the rest. */
export function marked(text: string, asked: readonly string[]): Part[] {
  const parts = text.split(/(\s+)/u).map((part) => ({ part, isFound: foundIn(part, asked).length > 0 }));
  return parts.filter(({ part }) => part !== '');
}

const LONGEST = 220;
const BEFORE = 60;

/** A long text cut to what stands around the first word that was asked for. */
export function shortened(text: string, asked: readonly string[]): string {
  if (text.length <= LONGEST) return text;
  const parts = marked(text, asked);
  const first = parts.findIndex(({ isFound }) => isFound);
  const at = parts.slice(0, Math.max(0, first)).reduce((sum, { part }) => sum + part.length, 0);
  const from = at <= BEFORE ? 0 : text.lastIndexOf(' ', at - BEFORE) + 1;
  const to = from + LONGEST;
  return `${from > 0 ? '… ' : ''}${text.slice(from, to)}${to < text.length ? ' …' : ''}`;
}

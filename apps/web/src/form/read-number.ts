/** A number as people type it: comma or point, spaces around. */

/** Null for anything that is not one finite number. */
export function readNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return null;
  return Number(plain);
}

/** What is wrong with the text as a number above 0 (or from 0 on), null where nothing is; empty text is never wrong. */
export function numberFault(text: string, { from0 = false }: { readonly from0?: boolean } = {}): string | null {
  if (text.trim() === '') return null;
  const value = readNumber(text);
  if (value === null) return `"${text.trim()}" is not a number. Write digits, like 4.5.`;
  if (from0 ? value < 0 : value <= 0) return `It has to be ${from0 ? 'at least' : 'more than'} 0.`;
  return null;
}

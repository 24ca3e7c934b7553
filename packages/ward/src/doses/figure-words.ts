/** Figures as paper and screen write them: plain, and spelled out beside it, since a point is easily lost. */

const SMALL = [
  'nought',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
] as const;
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'] as const;
const FIGURES = 4;
const MOST_DECIMALS = 20;

/** Four figures at most, never an exponent, never a point without a nought before it. */
export function plain(value: number): string {
  if (value === 0) return '0';
  const decimals = Math.max(0, FIGURES - 1 - Math.floor(Math.log10(Math.abs(value))));
  const written = value.toFixed(Math.min(decimals, MOST_DECIMALS));
  return written.includes('.') ? written.replace(/\.?0+$/, '') : written;
}

/** `0.075` as "nought point nought seven five". */
export function spelled(figure: string): string {
  const [whole = '0', decimals = ''] = figure.split('.');
  const before = wholeWords(Number(whole));
  return decimals === '' ? before : `${before} point ${[...decimals].map((digit) => SMALL[Number(digit)]).join(' ')}`;
}

function wholeWords(n: number): string {
  if (n < 20) return SMALL[n] ?? String(n);
  if (n < 100) return [TENS[Math.floor(n / 10)], n % 10 === 0 ? '' : SMALL[n % 10]].filter(Boolean).join('-');
  if (n < 1000) return joined(`${SMALL[Math.floor(n / 100)]} hundred`, n % 100);
  if (n < 1_000_000) return joined(`${wholeWords(Math.floor(n / 1000))} thousand`, n % 1000);
  return String(n);
}

const joined = (high: string, rest: number): string => {
  if (rest === 0) return high;
  return rest < 100 ? `${high} and ${wholeWords(rest)}` : `${high} ${wholeWords(rest)}`;
};

/** Micrograms in full: the short form is misread for milligrams. */
export const unitWords = (unit: string): string => unit.replace('µg', 'micrograms');

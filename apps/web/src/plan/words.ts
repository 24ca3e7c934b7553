/** The planner's words: loads, directions, figures with their decimals. */
import type { Verdict } from '@bonewright/construct';

const THIN_SPACE = '\u2009';

/** Fixed decimals, a true minus sign, thin spaces between thousands. */
export function figure(value: number, decimals = 1): string {
  const [whole = '', rest] = Math.abs(value).toFixed(decimals).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE);
  const isNegative = value < 0 && Number(value.toFixed(decimals)) !== 0;
  return (isNegative ? '−' : '') + (rest ? `${grouped}.${rest}` : grouped);
}

/** Three figures that count, whatever the size: 0.0342, 1.26, 537. */
export function threeFigures(value: number): string {
  const size = Math.abs(value);
  if (size === 0) return '0';
  const decimals = Math.max(0, 2 - Math.floor(Math.log10(size)));
  return figure(value, Math.min(decimals, 4));
}

const SQUARE: Readonly<Record<number, string>> = { 0: 'medial', 90: 'cranial', [-90]: 'caudal', 180: 'lateral' };

/** How a pin is aimed about the bone: `medial`, `20° cranial of medial`. */
export function directionWords(aboutDeg: number): string {
  const turned = ((((aboutDeg + 180) % 360) + 360) % 360) - 180;
  const deg = turned === -180 ? 180 : turned;
  const word = SQUARE[deg];
  if (word) return word;
  const isMedial = Math.abs(deg) < 90;
  const off = isMedial ? Math.abs(deg) : 180 - Math.abs(deg);
  return `${figure(off, 0)}° ${deg > 0 ? 'cranial' : 'caudal'} of ${isMedial ? 'medial' : 'lateral'}`;
}

/** `square to the bone`, `12° leaning distally`. */
export function tiltWords(tiltDeg: number): string {
  if (tiltDeg === 0) return 'square to the bone';
  return `outer end ${figure(Math.abs(tiltDeg), 0)}° ${tiltDeg > 0 ? 'distal' : 'proximal'}`;
}

const WORRY: Readonly<Record<Verdict, number>> = { good: 0, watch: 1, stop: 2 };

export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  return verdicts.reduce<Verdict>((worst, next) => (WORRY[next] > WORRY[worst] ? next : worst), 'good');
}

export const byWorry = (a: { readonly verdict: Verdict }, b: { readonly verdict: Verdict }): number =>
  WORRY[b.verdict] - WORRY[a.verdict];

/** Rows of the drawer by what a surgeon calls them. */
export const KIND_WORDS = {
  smooth: 'smooth pin',
  'threaded-end': 'threaded at its end',
  'threaded-centre': 'threaded in its middle',
  needle: 'needle',
} as const;

/** The planner's words: figures with their decimals, tilts, kinds of pin. */
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

/** `square to the bone`, `12° leaning distally`. */
export function tiltWords(tiltDeg: number): string {
  if (tiltDeg === 0) return 'square to the bone';
  return `outer end ${figure(Math.abs(tiltDeg), 0)}° ${tiltDeg > 0 ? 'distal' : 'proximal'}`;
}

/** Rows of the drawer by what a surgeon calls them. */
export const KIND_WORDS = {
  smooth: 'smooth pin',
  'threaded-end': 'threaded at its end',
  'threaded-centre': 'threaded in its middle',
  needle: 'needle',
} as const;

/** A ranked plan as its card says it. */
import type { Construct, Drawer, Verdict } from '@bonewright/construct';
import { figure } from '../words.ts';

export interface PlanCardFacts {
  readonly key: string;
  readonly name: string;
  readonly p05: number;
  readonly lines: readonly string[];
  readonly verdict: Verdict;
  readonly lastResort: boolean;
  readonly isShown: boolean;
  readonly construct: Construct;
}

const NAMES: Readonly<Record<string, string>> = {
  surest: 'Surest',
  lightest: 'Lightest',
  'fewest holes': 'Fewest holes',
  'no IM pin': 'No IM pin',
  'as chosen': 'As chosen',
};

export const planName = (label: string): string => NAMES[label] ?? label.charAt(0).toUpperCase() + label.slice(1);

/** Two lines of what it is made of: `4 pins 0.8, IM pin 0.6 tied in`, `column 6 mm, 8 holes, 2.7 g`. */
export function madeOf(construct: Construct, drawer: Drawer, holes: number, massG: number): string[] {
  return [
    [pinsWords(construct, drawer), imWords(construct, drawer)].filter(Boolean).join(' · '),
    [columnWords(construct, drawer), `${holes} holes`, `${figure(massG)} g`].join(' · '),
  ];
}

function pinsWords({ pins }: Construct, drawer: Drawer): string {
  const sizes = pins.map((pin) => drawer.pins.find(({ id }) => id === pin.drawerId)?.diameterMm ?? 0);
  const different = [...new Set(sizes)].toSorted((a, b) => b - a);
  if (different.length === 1) return `${pins.length} pins ${sizeWords(different[0]!)}${wayWords(pins)}`;
  return `pins ${different.map((size) => `${sizes.filter((each) => each === size).length} × ${sizeWords(size)}`).join(', ')}`;
}

/** Nothing for square pins in one plane. */
function wayWords(pins: Construct['pins']): string {
  if (pins.some(({ tiltDeg }) => tiltDeg !== 0)) return ' leaned';
  return pins.some(({ aboutDeg }) => aboutDeg !== pins[0]?.aboutDeg) ? ' in two planes' : '';
}

/** At most two decimals, at least one: 0.8, 0.65. */
const sizeWords = (mm: number): string => figure(mm, 2).replace(/0$/, '');

function imWords({ im }: Construct, drawer: Drawer): string {
  if (!im) return '';
  const diameter = drawer.imPins.find(({ id }) => id === im.drawerId)?.diameterMm;
  return `IM pin ${diameter ? sizeWords(diameter) : ''} ${im.tiedIn ? 'tied in' : 'left free'}`;
}

function columnWords(construct: Construct, drawer: Drawer): string {
  const sizes = [construct.column]
    .flat()
    .map((choice) => drawer.columns.find(({ id }) => id === choice.drawerId)?.diameterMm);
  return `${sizes.length > 1 ? 'two columns' : 'column'} ${sizes.map((size) => (size ? figure(size).replace('.0', '') : '?')).join(' and ')} mm`;
}

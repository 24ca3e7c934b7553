/** A page to cut: a strip at 1:1 to lay along the bone, with a mark for each pin, and where each stands from both ends. */
import type { Case, Plan } from '@bonewright/construct';
import type { Paper, Point } from '../paper/paper.ts';
import { CHECK_BAR_HEIGHT_MM, checkBar } from './check-bar.ts';
import type { TheatreSheetFacts } from './facts.ts';
import { aim, figure, fromFractureMm, wireWords } from './words.ts';

const STRIP_MM = 22;
/** At its top, for the words that say which end is which. */
const BAND_MM = 4.2;
const HEADING_MM = 25;
const LINE = { edge: 0.18, pin: 0.3, ruler: 0.18 };
const ROW_MM = 7;
const COLUMNS = [0, 14, 38, 72, 102, 134];
const DIAL = { centreMm: 129, radiusMm: 2, stemMm: 1.4 };
const HEADINGS = [
  'pin',
  'wire, mm',
  'from the proximal end',
  'from the distal end',
  'from fracture',
  'aim; drawn: cranial up, medial right',
];
const HOW =
  'Cut along the outer lines. Lay the strip along the bone on the side of the pins, its ends at the ends of the bone as the films show them; mark the bone or the skin at each line. Paper cut from a sheet whose check bar is not 100 mm is wrong. Paper is not sterile: keep it in a sterile clear cover, or mark before draping.';

/** Draws the page's work below y. */
export function drillStrip(paper: Paper, { patientCase, plan }: TheatreSheetFacts, y: number): void {
  const { lengthMm } = patientCase.bone;
  paper.part('H2', () => paper.text('Strip to cut out, 1:1', [paper.left, y], { face: 'heading', size: 13 }));
  paper.part('P', () => paper.text(HOW, [paper.left, y + 6.5], { size: 9.5, width: paper.right - paper.left }));
  const isTooLong = lengthMm > paper.right - paper.left;
  const top = y + HEADING_MM;
  if (isTooLong) paper.part('P', () => paper.text(TOO_LONG, [paper.left, top + 4], { face: 'strong', size: 11 }));
  else
    paper.part('Figure', () => strip(paper, patientCase, plan, [(paper.widthMm - lengthMm) / 2, top]), described(plan));
  checkBar(paper, top + STRIP_MM + 8);
  table(paper, patientCase, plan, top + STRIP_MM + 8 + CHECK_BAR_HEIGHT_MM + 4);
}

const TOO_LONG = 'The bone is longer than this paper is wide: measure from the figures below.';

const described = ({ pins }: Plan): string =>
  `Strip at 1:1 with a line at each pin: ${pins.map(({ sMm }, i) => `P${i + 1} at ${figure(sMm)} mm`).join(', ')}`;

function strip(paper: Paper, { bone, fracture, keepOut }: Case, { pins }: Plan, [x, y]: Point): void {
  const { lengthMm } = bone;
  const stretch = (fromMm: number, toMm: number) => paper.hatch(box([x + fromMm, y + 11], toMm - fromMm, 4));
  if (keepOut) {
    stretch(0, keepOut.proximalMm);
    stretch(lengthMm - keepOut.distalMm, lengthMm);
  }
  paper.rect([x + fracture.fromMm, y + 11], Math.max(fracture.toMm - fracture.fromMm, 0.4), 4, { fill: 'grey' });
  paper.rect([x, y], lengthMm, STRIP_MM, { line: LINE.edge });
  for (let s = 0; s <= lengthMm + 1e-9; s += 1) {
    const long = s % 10 === 0 ? 2.6 : s % 5 === 0 ? 1.8 : 1.1;
    paper.line([x + s, y + STRIP_MM], [x + s, y + STRIP_MM - long], LINE.ruler);
  }
  for (let s = 10; s < lengthMm - 4; s += 10) {
    const isFree = pins.every(({ sMm }) => Math.abs(sMm - s) > 2);
    if (isFree) paper.text(String(s), [x + s, y + STRIP_MM - 5.6], { size: 7, align: 'center' });
  }
  paper.line([x, y + BAND_MM], [x + lengthMm, y + BAND_MM], LINE.edge);
  paper.text('proximal', [x + 0.8, y + 0.3], { size: 7.5 });
  paper.text('distal', [x + lengthMm - 0.8, y + 0.3], { size: 7.5, align: 'right' });
  for (const [i, { sMm }] of pins.entries()) pinMark(paper, `P${i + 1}`, [x + sMm, y]);
}

/** A line across the strip, broken for its name. */
function pinMark(paper: Paper, name: string, [x, y]: Point): void {
  const width = paper.textWidth(name, NAME);
  paper.line([x, y + BAND_MM], [x, y + BAND_MM + 1.2], LINE.pin);
  paper.rect([x - width / 2 - 0.3, y + BAND_MM + 1.2], width + 0.6, 3.6, { fill: 'white' });
  paper.text(name, [x, y + BAND_MM + 1], NAME);
  paper.line([x, y + BAND_MM + 4.8], [x, y + STRIP_MM], LINE.pin);
}

const NAME = { face: 'bold', size: 9, align: 'center' } as const;

const box = ([x, y]: Point, width: number, height: number): Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

function table(paper: Paper, patientCase: Case, plan: Plan, y: number): void {
  const { lengthMm } = patientCase.bone;
  paper.part('H2', () =>
    paper.text('Each pin from both ends of the bone, mm', [paper.left, y], { face: 'heading', size: 13 }),
  );
  HEADINGS.forEach((words, i) => {
    paper.part('P', () => paper.text(words, [paper.left + COLUMNS[i]!, y + 7.5], { size: 8.5 }));
  });
  for (const [i, pin] of plan.pins.entries()) {
    const top = y + 12.5 + i * ROW_MM;
    paper.decoration(() => paper.line([paper.left, top], [paper.right, top], 0.15));
    const cells = [
      `P${i + 1}`,
      wireWords(pin, patientCase),
      figure(pin.sMm),
      figure(lengthMm - pin.sMm),
      figure(fromFractureMm(pin, patientCase)),
      aim(pin),
    ];
    cells.forEach((text, k) => {
      const face = k === 0 || k === 2 || k === 3 ? 'bold' : 'regular';
      paper.part('P', () => paper.text(text, [paper.left + COLUMNS[k]!, top + 1.6], { face, size: 10.5 }));
    });
    const centre: Point = [paper.left + DIAL.centreMm, top + ROW_MM / 2];
    paper.part('Figure', () => dial(paper, pin.aboutDeg, centre), `P${i + 1} through the bone cut across: ${aim(pin)}`);
  }
}

/** The bone cut across, cranial up and medial right: the pin through it, sticking out on the side of its aim, as the section does. */
function dial(paper: Paper, aboutDeg: number, [x, y]: Point): void {
  const angle = (aboutDeg * Math.PI) / 180;
  const at = (reachMm: number): Point => [x + Math.cos(angle) * reachMm, y - Math.sin(angle) * reachMm];
  paper.ellipse([x, y], DIAL.radiusMm, DIAL.radiusMm, { line: 0.25 });
  paper.line(at(-DIAL.radiusMm), at(DIAL.radiusMm + DIAL.stemMm), 0.5);
}

/** The pins in order, each with a box for where it really went and one for the count. */
import type { Case, Plan } from '@bonewright/construct';
import type { Paper, Words } from '../paper/paper.ts';
import type { TheatreSheetFacts } from './facts.ts';
import { aim, figure, fromFractureMm, wireWords } from './words.ts';

/** Heights of a row, the usual one first: a table of many pins is set tighter. */
export const ROWS_MM = [8.2, 7.4, 6.6] as const;
export type RowMm = (typeof ROWS_MM)[number];
const COLUMNS = [0, 18, 46, 70, 92, 128, 145];
const HEADINGS = ['pin', 'wire, mm', 'at, mm', 'from fracture', 'aim', 'free', 'cut to'];

interface Row {
  readonly cells: readonly string[];
  /** A sentence across the middle instead of single figures. */
  readonly sentence?: string;
}

/** Height the table needs, mm. */
export const pinTableHeightMm = (plan: Plan, rowMm: RowMm): number => 16 + rowMm * rowCount(plan);

const rowCount = (plan: Plan): number => plan.pins.length + (plan.im ? 1 : 0) + plan.column.length;

/** Draws the table at y. */
export function pinTable(paper: Paper, { patientCase, plan }: TheatreSheetFacts, y: number, rowMm: RowMm): void {
  paper.part('H2', () => paper.text('Pins, proximal end first', [paper.left, y - 0.6], { face: 'heading', size: 13 }));
  paper.decoration(() => paper.line([paper.left, y + 6.5], [paper.right, y + 6.5], 0.5));
  HEADINGS.forEach((h, i) => {
    paper.part('P', () => paper.text(h, [paper.left + COLUMNS[i]!, y + 7.5], { size: 8.5 }));
  });
  paper.part('P', () => paper.text('as placed', [paper.right - 21, y + 7.5], { size: 8.5, align: 'center' }));
  paper.part('P', () => paper.text('in', [paper.right - 4, y + 7.5], { size: 8.5, align: 'center' }));
  let at = y + 12.5;
  for (const row of [...pinRows(plan, patientCase), ...otherRows(plan)]) {
    drawRow(paper, row, at, rowMm);
    at += rowMm;
  }
  paper.decoration(() => paper.line([paper.left, at], [paper.right, at], 0.5));
}

function pinRows(plan: Plan, patientCase: Case): Row[] {
  return plan.pins.map((pin, i) => ({
    cells: [
      `P${i + 1}`,
      wireWords(pin, patientCase),
      figure(pin.sMm),
      figure(fromFractureMm(pin, patientCase)),
      aim(pin),
      figure(pin.freeLengthMm),
      figure(pin.cutLengthMm),
    ],
  }));
}

function otherRows(plan: Plan): Row[] {
  const im = plan.im && {
    cells: ['IM', `${figure(plan.im.diameterMm)} smooth`, '', '', '', '', figure(plan.im.lengthMm)],
    sentence: plan.im.tiedIn
      ? 'along the canal, proximal end bent and tied into the column'
      : 'along the canal, cut short, not tied in',
  };
  const columns = plan.column.map((c) => ({
    cells: ['Column', `${figure(c.diameterMm)}`, '', '', '', '', ''],
    sentence: `${figure(c.fromMm, 0)} to ${figure(c.toMm, 0)} mm${c.side === 'far' ? ', far side' : ''}, clear of the skin by ${figure(c.clearanceMm)}; about ${figure(c.massG)} g; begun at`,
  }));
  return [...(im ? [im] : []), ...columns];
}

function drawRow(paper: Paper, { cells, sentence }: Row, top: number, rowMm: RowMm): void {
  const y = top - (ROWS_MM[0] - rowMm) / 2;
  paper.decoration(() => {
    paper.line([paper.left, top], [paper.right, top], 0.15);
    paper.rect([paper.right - 30, top + 1.1], 18, rowMm - 2.2, { line: 0.25 });
    paper.rect([paper.right - 7, top + 1.1], 6, rowMm - 2.2, { line: 0.25 });
  });
  cells.forEach((text, i) => {
    if (text) paper.part('P', () => paper.text(text, [paper.left + COLUMNS[i]!, y + baseline(i)], words(i)));
  });
  if (sentence) paper.part('P', () => paper.text(sentence, [paper.left + COLUMNS[2]!, y + 2.2], { size: 9.5 }));
}

const baseline = (column: number): number => (column === 2 ? 1 : column === 0 ? 1.6 : 2.2);
const words = (column: number): Words =>
  column === 2 ? { face: 'bold', size: 14.2 } : column === 0 ? { face: 'bold', size: 11 } : { size: 9.5 };

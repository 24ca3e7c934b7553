/** The emergency sheet: crash drugs signed and drawn up beforehand, one page, to be read at arm's length with gloves on. */
import { InputError } from '@bonewright/fault';
import { Paper } from '../paper/paper.ts';
import { type DosePaperFacts, localMoment, type PrintedDose, signedDoses } from './dose-facts.ts';
import { doseFoot, doseHead, patientName } from './dose-frame.ts';
import { borrowedWords, doseWords, drawSpelled, drawWords, notThese, recipeWords, routeWords } from './dose-words.ts';

const FIGURE_MM = 62;
/** Drug, volume and its spelling below one another. */
const LEAST_ROW_MM = 30;
const MOST_SPARE_MM = 16;

/** Makes the PDF. Throws InputError where one of its drugs is not signed, where the mass no longer holds, or where they do not fit one page. */
export async function emergencySheet(facts: DosePaperFacts): Promise<Uint8Array> {
  const doses = signedDoses(facts, ({ line, given }) => line.use === 'emergency' && given === null);
  const title = `Emergency sheet, ${patientName(facts)}`;
  const paper = new Paper({ title, size: facts.size ?? 'A4', made: facts.made });
  paper.page();
  const top = doseHead(paper, facts, 'Emergency');
  const room = doseFoot(paper, facts, 1) - top;
  const rows = doses.map((dose) => rowOf(paper, facts, dose));
  const spare = (room - rows.reduce((sum, { heightMm }) => sum + heightMm, 0)) / rows.length;
  if (spare < 0)
    throw new InputError(`${rows.length} crash drugs do not fit one page`, 'doses', 'void those that are not wanted');
  let y = top;
  for (const row of rows) {
    drawRow(paper, row, y);
    y += row.heightMm + Math.min(spare, MOST_SPARE_MM);
    paper.decoration(() => paper.line([paper.left, y - 2], [paper.right, y - 2], 0.25));
  }
  return paper.finish();
}

interface Line {
  readonly words: string;
  readonly style: { readonly size: number; readonly face: 'bold' | 'strong' | 'regular'; readonly width: number };
}

interface Row {
  readonly signature: PrintedDose['signature'];
  readonly lines: readonly (Line & { readonly heightMm: number })[];
  readonly heightMm: number;
}

function rowOf(paper: Paper, { minutesEastOfUtc }: DosePaperFacts, { signature }: PrintedDose): Row {
  const { value, by, at } = signature;
  const width = paper.right - paper.left - FIGURE_MM;
  const line = (words: string, size: number, face: Line['style']['face']): Line => ({
    words,
    style: { size, face, width },
  });
  const lines = [
    line(routeWords(value), 16, 'bold'),
    line(recipeWords(value), 11, value.recipe ? 'strong' : 'regular'),
    line(doseWords(value), 9.5, 'regular'),
    line(borrowedWords(value), 9, 'strong'),
    line(notThese(value), 9, 'regular'),
    line(
      `Signed by ${by}, ${localMoment(at, minutesEastOfUtc)}${value.secondPerson ? `; seen by ${value.secondPerson} as well` : ''}.`,
      9,
      'regular',
    ),
  ]
    .filter(({ words }) => words !== '')
    .map((each) => ({ ...each, heightMm: paper.textHeight(each.words, each.style) + 0.6 }));
  const rightMm = lines.reduce((sum, { heightMm }) => sum + heightMm, 4);
  return { signature, lines, heightMm: Math.max(LEAST_ROW_MM, rightMm) };
}

function drawRow(paper: Paper, { signature: { value }, lines }: Row, y: number): void {
  const width = FIGURE_MM - 2;
  paper.part('H2', () => paper.text(value.line.drug, [paper.left, y], { face: 'bold', size: 18, width }));
  paper.part('P', () => paper.text(drawWords(value), [paper.left, y + 8], { face: 'bold', size: 32 }));
  paper.part('P', () => paper.text(drawSpelled(value), [paper.left, y + 21.5], { size: 10, width }));
  let below = y;
  for (const { words, style, heightMm } of lines) {
    const at = below;
    paper.part('P', () => paper.text(words, [paper.left + FIGURE_MM, at], style));
    below += heightMm;
  }
}

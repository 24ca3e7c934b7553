/** The 100 mm bar that tells whether the printer kept the scale. */
import type { Paper } from '../paper/paper.ts';

const BAR_MM = 100;
const ADVICE = 'Lay a ruler on this bar. If it is not 100 mm, print again at 100 %; do not use the drawings.';

export const CHECK_BAR_HEIGHT_MM = 13;

/** Draws the bar, centred on the page, at y. */
export function checkBar(paper: Paper, y: number): void {
  const x = (paper.widthMm - BAR_MM) / 2;
  paper.decoration(() => {
    paper.line([x, y + 3], [x + BAR_MM, y + 3], 0.4);
    for (let at = 0; at <= BAR_MM; at += 10) tick(paper, x, y + 3, at);
  });
  paper.part('P', () => paper.text('0', [x - 4, y + 0.9], { size: 10, align: 'right' }));
  paper.part('P', () => paper.text('100 mm', [x + BAR_MM + 4, y + 0.6], { face: 'bold', size: 11 }));
  paper.part('P', () => paper.text(ADVICE, [paper.widthMm / 2, y + 7.5], { size: 9.5, align: 'center' }));
}

/** A stroke across the bar; the two at its ends stand inside, so that ink from edge to edge is 100 mm. */
function tick(paper: Paper, x: number, y: number, at: number): void {
  const isEnd = at % BAR_MM === 0;
  const weight = isEnd ? 0.4 : 0.25;
  const half = isEnd ? 3 : at % 50 === 0 ? 2 : 1.2;
  const inside = at === 0 ? weight / 2 : at === BAR_MM ? -weight / 2 : 0;
  paper.line([x + at + inside, y - half], [x + at + inside, y + half], weight);
}

/** The five margins, worst first: bars on one log axis from 0.5 to 6, p05 the figure that decides. */
import { LOAD_WORDS, loadsWorstFirst, type Margin, marginVerdict, type Plan } from '@bonewright/construct';
import type { Paper, Point } from '../paper/paper.ts';
import { mark } from './marks.ts';
import { figure } from './words.ts';

const ROW_MM = 7;
const AXIS = { from: 0.5, to: 6, atMm: 96, widthMm: 48 };
const TICKS = [1, 1.5, 3, 6];

export const MARGIN_BARS_HEIGHT_MM = 6.5 + 5 * ROW_MM + 5.5;

/** Draws the bars at y. */
export function marginBars(paper: Paper, plan: Plan, y: number): void {
  paper.part('H2', () => paper.text('Margins, worst first', [paper.left, y - 0.6], { face: 'heading', size: 13 }));
  const note = 'in 5, 50 and 95 of 100 trials it keeps less than this many times what is asked';
  paper.part('P', () => paper.text(note, [paper.right, y + 1.8], { size: 8.5, align: 'right' }));
  paper.decoration(() => paper.line([paper.left, y + 6.5], [paper.right, y + 6.5], 0.5));
  let at = y + 6.5;
  for (const load of loadsWorstFirst(plan)) {
    row(paper, LOAD_WORDS[load], plan.loads[load].margin, at);
    at += ROW_MM;
  }
  axis(paper, at);
}

const across = (paper: Paper, margin: number): number => {
  const held = Math.min(Math.max(margin, AXIS.from), AXIS.to);
  return paper.left + AXIS.atMm + (AXIS.widthMm * Math.log(held / AXIS.from)) / Math.log(AXIS.to / AXIS.from);
};

function row(paper: Paper, name: string, margin: Margin, y: number): void {
  const verdict = marginVerdict(margin);
  paper.part('P', () => paper.text(name, [paper.left, y + 1.6], { size: 9.5 }));
  paper.part('P', () => paper.text(margin.weakest, [paper.left + 50, y + 1.9], { size: 8.5 }));
  paper.part('P', () =>
    paper.text(figure(margin.p05, 2), [paper.right - 24, y + 0.9], { face: 'bold', size: 13, align: 'right' }),
  );
  paper.decoration(() => {
    bar(paper, margin, y);
    mark(paper, verdict, [paper.right - 17, y + 3.6]);
    paper.line([paper.left, y + ROW_MM], [paper.right, y + ROW_MM], 0.15);
  });
  paper.part('P', () => paper.text(verdict, [paper.right, y + 1.5], { face: 'strong', size: 10, align: 'right' }));
}

function bar(paper: Paper, { p05, p50, p95 }: Margin, y: number): void {
  const [x0, x1, x15] = [across(paper, AXIS.from), across(paper, 1), across(paper, 1.5)];
  const [top, bottom] = [y + 1.4, y + 5.6];
  const fails: Point[] = [
    [x0, top],
    [x1, top],
    [x1, bottom],
    [x0, bottom],
  ];
  paper.hatch(fails, 1.1);
  paper.line([x1, y + 0.8], [x1, y + 6.2], 0.55);
  paper.line([x15, y + 0.8], [x15, y + 6.2], 0.2, [0.8, 0.8]);
  const [a, m, b] = [across(paper, p05), across(paper, p50), across(paper, p95)];
  paper.rect([a, top + 0.5], Math.max(b - a, 0.4), bottom - top - 1, { line: 0.25, fill: 'white' });
  paper.line([a, y + 0.9], [a, y + 6.1], 0.9);
  paper.line([m, top + 0.5], [m, bottom - 0.5], 0.45);
  if (p05 > AXIS.to || p05 < AXIS.from) arrow(paper, p05 > AXIS.to ? 1 : -1, a, y + 3.5);
}

function arrow(paper: Paper, sense: 1 | -1, x: number, y: number): void {
  paper.path(
    [
      [x + sense * 2.4, y],
      [x + sense * 0.4, y - 1.4],
      [x + sense * 0.4, y + 1.4],
    ],
    { fill: 'black' },
    true,
  );
}

function axis(paper: Paper, y: number): void {
  for (const tick of TICKS) {
    const words = tick === 1 ? 'fails 1' : String(tick);
    const face = tick === 1 ? 'strong' : 'regular';
    paper.part('P', () => paper.text(words, [across(paper, tick), y + 0.6], { size: 8.5, face, align: 'center' }));
  }
}

/** What is read and filled in last: checks that ask for care, counts, cautions, and the title block. */
import { byWorry, type Check, type Plan, type Verdict } from '@bonewright/construct';
import { BUILD } from '../paper/build.ts';
import type { Paper } from '../paper/paper.ts';
import type { SheetTitle } from './facts.ts';
import { mark } from './marks.ts';

const TITLE_BLOCK_MM = 16;
const COUNTS_MM = 13;
const CAUTION =
  'A decision aid for a licensed veterinary surgeon, who decides and answers for the operation; local law and codes of practice come first. Margins rest on estimated loads and material figures: see the plan on screen for sources.';

/** Height of the foot, mm, kept free at the bottom of every page. */
export const FOOT_HEIGHT_MM = COUNTS_MM + TITLE_BLOCK_MM + 11;

export const MOST_CHECK_LINES = 4;
const CHECK_WORDS = { size: 9.5, width: 178 };

/** The checks that are not good, worst first, as many as a sheet holds, and what is left. */
function linesOf(plan: Plan, most: number): { readonly verdict: Verdict | null; readonly words: string }[] {
  const asked = worst(plan.checks);
  const shown = asked.slice(0, most).map((c) => ({ verdict: c.verdict, words: `${c.verdict}: ${c.because}` }));
  const left = asked.length - shown.length;
  return left > 0 ? [...shown, { verdict: null, words: `and ${left} more to watch: see the plan on screen` }] : shown;
}

const lineHeightMm = (paper: Paper, words: string): number => Math.max(5.2, paper.textHeight(words, CHECK_WORDS) + 1);

/** Height the check lines need, mm. */
export const checkLinesHeightMm = (paper: Paper, plan: Plan, most: number): number =>
  linesOf(plan, most).reduce((sum, { words }) => sum + lineHeightMm(paper, words), 2);

/** Draws the checks that ask for care, a line each. */
export function checkLines(paper: Paper, plan: Plan, most: number, y: number): void {
  let at = y;
  for (const { verdict, words } of linesOf(plan, most)) {
    if (verdict) paper.decoration(() => mark(paper, verdict, [paper.left + 2, at + 2.2]));
    paper.part('P', () => paper.text(words, [paper.left + 6, at], CHECK_WORDS));
    at += lineHeightMm(paper, words);
  }
}

const worst = (checks: readonly Check[]): Check[] => checks.filter((c) => c.verdict !== 'good').toSorted(byWorry);

/** Boxes for what went in and came out, and the caution, above the title block of the last page. */
export function counts(paper: Paper, plan: Plan): void {
  const y = paper.bottom - FOOT_HEIGHT_MM;
  const words = { size: 8.5, width: paper.right - paper.left };
  paper.part('P', () => paper.text(CAUTION, [paper.left, y + COUNTS_MM + 1], words));
  paper.decoration(() => paper.line([paper.left, y], [paper.right, y], 0.5));
  paper.part('H2', () => paper.text('Counts', [paper.left, y + 2], { face: 'heading', size: 13 }));
  const things = ['wires', ...(plan.im ? ['IM pins'] : []), 'swabs', 'needles'];
  const step = (paper.right - paper.left - 24) / things.length;
  things.forEach((thing, i) => {
    const x = paper.left + 24 + i * step;
    paper.part('P', () => paper.text(thing, [x + 14, y + 3], { size: 9.5, align: 'right' }));
    ['in', 'out'].forEach((when, k) => {
      paper.decoration(() => paper.rect([x + 16 + k * 11, y + 1.6], 9, 6, { line: 0.25 }));
      paper.part('P', () => paper.text(when, [x + 20.5 + k * 11, y + 8], { size: 8.5, align: 'center' }));
    });
  });
}

/** Who plans, who places, where lengths come from, which sheet: at the foot of every page. */
export function titleBlock(paper: Paper, title: SheetTitle, sheet: string): void {
  const y = paper.bottom - TITLE_BLOCK_MM;
  const edges = [0, 58, 116, 156].map((x) => paper.left + x);
  paper.decoration(() => {
    paper.rect([paper.left, y], paper.right - paper.left, TITLE_BLOCK_MM, { line: 0.5 });
    for (const x of edges.slice(1)) paper.line([x, y], [x, y + TITLE_BLOCK_MM], 0.25);
  });
  const cells = [
    ['planned by, sign'],
    ['placed by, sign'],
    ['lengths from', title.lengthsFrom],
    ['sheet, version', `${sheet} · ${title.version}`],
  ];
  cells.forEach(([name, value], i) => {
    const x = edges[i]! + 2;
    paper.part('P', () => paper.text(name!, [x, y + 1.2], { size: 8.5 }));
    if (!value) return;
    const words = i === 3 ? { face: 'bold' as const, size: 11 } : { size: 9, width: 36 };
    paper.part('P', () => paper.text(value, [x, y + 5], words));
  });
  paper.part('P', () => paper.text(BUILD, [edges[3]! + 2, y + 9.2], { size: 8 }));
  if (title.isDemonstration) {
    paper.part('P', () => paper.text('DEMONSTRATION', [edges[3]! + 2, y + 12.3], { size: 8, face: 'strong' }));
  }
}

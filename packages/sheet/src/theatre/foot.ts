/** What is read and filled in last: checks that ask for care, counts, cautions, and the title block. */
import type { Check, Plan } from '@bonewright/construct';
import type { Paper } from '../paper/paper.ts';
import type { TheatreSheetFacts } from './facts.ts';
import { mark } from './marks.ts';

const TITLE_BLOCK_MM = 16;
const COUNTS_MM = 13;
const CAUTION =
  'A decision aid for a licensed veterinary surgeon, who decides and answers for the operation; local law and codes of practice come first. Margins rest on estimated loads and material figures: see the plan on screen for sources.';

/** Height of the foot, mm, which always stands at the bottom of the last page. */
export const FOOT_HEIGHT_MM = COUNTS_MM + TITLE_BLOCK_MM + 11;

/** Checks that are not good, worst first, a line each; returns the y below them. */
export function checkLines(paper: Paper, plan: Plan, y: number, mostLines: number): number {
  const asked = worst(plan.checks);
  let at = y;
  for (const check of asked.slice(0, mostLines)) {
    paper.decoration(() => mark(paper, check.verdict, [paper.left + 2, at + 2.2]));
    const words = { size: 9.5, width: paper.right - paper.left - 8 };
    paper.part('P', () => paper.text(`${check.verdict}: ${check.because}`, [paper.left + 6, at], words));
    at += Math.max(5.2, paper.textHeight(`${check.verdict}: ${check.because}`, words) + 1);
  }
  const left = asked.length - mostLines;
  if (left > 0) {
    const more = `and ${left} more to watch: see the plan on screen`;
    paper.part('P', () => paper.text(more, [paper.left + 6, at], { size: 9.5 }));
    at += 5.2;
  }
  return at;
}

function worst(checks: readonly Check[]): Check[] {
  const rank = { stop: 0, watch: 1, good: 2 } as const;
  return checks.filter((c) => c.verdict !== 'good').sort((a, b) => rank[a.verdict] - rank[b.verdict]);
}

/** Draws counts, caution and title block at the bottom of the page. */
export function foot(paper: Paper, { title, plan }: TheatreSheetFacts, sheet: string): void {
  const y = paper.bottom - FOOT_HEIGHT_MM;
  counts(paper, y, plan.im !== null);
  const words = { size: 8.5, width: paper.right - paper.left };
  paper.part('P', () => paper.text(CAUTION, [paper.left, y + COUNTS_MM + 1], words));
  titleBlock(paper, title, sheet, paper.bottom - TITLE_BLOCK_MM);
}

function counts(paper: Paper, y: number, hasIm: boolean): void {
  paper.decoration(() => paper.line([paper.left, y], [paper.right, y], 0.5));
  paper.part('H2', () => paper.text('Counts', [paper.left, y + 2], { face: 'heading', size: 13 }));
  const things = ['wires', ...(hasIm ? ['IM pins'] : []), 'swabs', 'needles'];
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

function titleBlock(paper: Paper, title: TheatreSheetFacts['title'], sheet: string, y: number): void {
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
  if (title.isDemonstration) {
    paper.part('P', () => paper.text('DEMONSTRATION', [edges[3]! + 2, y + 11.2], { size: 8.5, face: 'strong' }));
  }
}

/** The theatre sheet: one A4 or Letter page where the bone allows, drawings at exactly 1:1, and a page with a strip to cut out. */
import { Paper } from '../paper/paper.ts';
import { CHECK_BAR_HEIGHT_MM, checkBar } from './check-bar.ts';
import { drillStrip } from './drill-strip.ts';
import type { TheatreSheetFacts } from './facts.ts';
import { checkLines, checkLinesHeightMm, counts, FOOT_HEIGHT_MM, MOST_CHECK_LINES, titleBlock } from './foot.ts';
import { head, headHeightMm } from './head.ts';
import { MARGIN_BARS_HEIGHT_MM, marginBars } from './margin-bars.ts';
import { pinTable, pinTableHeightMm, ROWS_MM, type RowMm } from './pin-table.ts';
import { views, viewsHeightMm } from './views.ts';

/** One part of the sheet, which never breaks across pages. */
interface Part {
  readonly heightMm: number;
  readonly draw: (y: number) => void;
}

/** Makes the PDF of the plan's theatre sheet. Lengths on it are true: 1 mm in the plan is 1 mm on paper. */
export async function theatreSheet(facts: TheatreSheetFacts): Promise<Uint8Array> {
  const { title } = facts;
  const paper = new Paper({ title: `Theatre sheet, ${title.patient}`, size: title.size ?? 'A4', made: title.made });
  const pages = paged(partsOf(paper, facts), roomMm(paper, facts));
  const count = pages.length + 1;
  pages.forEach((parts, i) => {
    let y = begin(paper, facts);
    for (const part of parts) {
      part.draw(y);
      y += part.heightMm;
    }
    if (i === pages.length - 1) counts(paper, facts.plan);
    titleBlock(paper, title, `${i + 1} of ${count}`);
  });
  drillStrip(paper, facts, begin(paper, facts));
  titleBlock(paper, title, `${count} of ${count}`);
  return paper.finish();
}

/** A new page with the sheet's head; says where it is free from. */
function begin(paper: Paper, facts: TheatreSheetFacts): number {
  paper.page();
  head(paper, facts);
  return paper.top + headHeightMm(paper, facts);
}

/** Rows of the table as tall as keep the sheet on one page, or the usual ones where none would. */
function partsOf(paper: Paper, facts: TheatreSheetFacts): Part[] {
  const room = roomMm(paper, facts);
  const tries = ROWS_MM.map((rowMm) => partsWith(paper, facts, rowMm));
  const heightOf = (parts: readonly Part[]): number => parts.reduce((sum, part) => sum + part.heightMm, 0);
  return tries.find((parts) => heightOf(parts) <= room) ?? partsWith(paper, facts, ROWS_MM[0]);
}

function partsWith(paper: Paper, facts: TheatreSheetFacts, rowMm: RowMm): Part[] {
  const { plan } = facts;
  const parts: Part[] = [
    { heightMm: viewsHeightMm(facts), draw: (y) => views(paper, facts, y) },
    { heightMm: CHECK_BAR_HEIGHT_MM, draw: (y) => checkBar(paper, y) },
    { heightMm: pinTableHeightMm(plan, rowMm), draw: (y) => pinTable(paper, facts, y, rowMm) },
    { heightMm: MARGIN_BARS_HEIGHT_MM, draw: (y) => marginBars(paper, plan, y) },
  ];
  const left = parts.reduce((room, part) => room - part.heightMm, roomMm(paper, facts));
  const most = linesThatFit(left, (lines) => checkLinesHeightMm(paper, plan, lines));
  return [...parts, { heightMm: checkLinesHeightMm(paper, plan, most), draw: (y) => checkLines(paper, plan, most, y) }];
}

/** As many check lines as keep the sheet on one page, or the usual number where none would. */
function linesThatFit(roomLeftMm: number, heightMm: (lines: number) => number): number {
  for (let lines = MOST_CHECK_LINES; lines > 0; lines -= 1) if (heightMm(lines) <= roomLeftMm) return lines;
  return MOST_CHECK_LINES;
}

const roomMm = (paper: Paper, facts: TheatreSheetFacts): number =>
  paper.bottom - FOOT_HEIGHT_MM - paper.top - headHeightMm(paper, facts);

/** Fills page after page; the first part of a page stands on it even where it is too tall. */
function paged(parts: readonly Part[], roomOnPageMm: number): Part[][] {
  const pages: Part[][] = [[]];
  let left = roomOnPageMm;
  for (const part of parts) {
    if (part.heightMm > left && pages.at(-1)!.length > 0) {
      pages.push([]);
      left = roomOnPageMm;
    }
    pages.at(-1)!.push(part);
    left -= part.heightMm;
  }
  return pages;
}

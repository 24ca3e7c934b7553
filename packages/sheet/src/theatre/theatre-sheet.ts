/** The theatre sheet: one A4 or Letter page where the bone allows, drawings at exactly 1:1. */
import { Paper } from '../paper/paper.ts';
import { CHECK_BAR_HEIGHT_MM, checkBar } from './check-bar.ts';
import type { TheatreSheetFacts } from './facts.ts';
import { checkLines, FOOT_HEIGHT_MM, foot } from './foot.ts';
import { head } from './head.ts';
import { MARGIN_BARS_HEIGHT_MM, marginBars } from './margin-bars.ts';
import { pinTable, pinTableHeightMm } from './pin-table.ts';
import { views } from './views.ts';

const MOST_CHECK_LINES = 4;

/** Makes the PDF of the plan's theatre sheet. Lengths on it are true: 1 mm in the plan is 1 mm on paper. */
export async function theatreSheet(facts: TheatreSheetFacts): Promise<Uint8Array> {
  const { plan, title } = facts;
  const paper = new Paper({ title: `Theatre sheet, ${title.patient}`, size: title.size ?? 'A4', made: title.made });
  paper.page();
  const drawn = views(paper, facts, head(paper, facts));
  const tablesMm = CHECK_BAR_HEIGHT_MM + pinTableHeightMm(plan) + MARGIN_BARS_HEIGHT_MM + 8;
  const onOnePage = drawn + tablesMm <= paper.bottom - FOOT_HEIGHT_MM;
  let y = checkBar(paper, drawn);
  if (!onOnePage) {
    foot(paper, facts, '1 of 2');
    paper.page();
    y = head(paper, facts);
  }
  y = marginBars(paper, plan, pinTable(paper, facts, y)) + 2;
  const lines = Math.floor((paper.bottom - FOOT_HEIGHT_MM - y) / 5.5) - 1;
  checkLines(paper, plan, y, Math.max(1, Math.min(MOST_CHECK_LINES, lines)));
  foot(paper, facts, onOnePage ? '1 of 1' : '2 of 2');
  return paper.finish();
}

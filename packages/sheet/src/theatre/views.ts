/** Both views at 1:1 side by side, with the section at the pin that has least to spare. */
import { constructOf, type SectionFigure, sectionFigure, type ViewFigure, viewFigures } from '@bonewright/construct';
import type { Paper } from '../paper/paper.ts';
import type { TheatreSheetFacts } from './facts.ts';
import { sectionDrawing } from './section-drawing.ts';
import { viewDrawing } from './view-drawing.ts';

const RULER_MM = 14;
const LABEL_MM = 17;
const HEADING_MM = 13;
const SECTION_MM = 46;
const SECTION_HEIGHT_MM = 62;
const SIDES = {
  craniocaudal: { title: 'Craniocaudal', note: 'medial to the right', sense: 1 },
  mediolateral: { title: 'Mediolateral', note: 'cranial to the left', sense: -1 },
} as const;

/** Height both views need, mm: the taller of the bone with its frame and the section. */
export function viewsHeightMm({ patientCase, plan }: TheatreSheetFacts): number {
  const tallest = Math.max(...viewFigures(patientCase, constructOf(plan)).map(({ extent: { s } }) => s[1] - s[0]));
  return Math.max(HEADING_MM + tallest, SECTION_HEIGHT_MM) + 3;
}

/** Draws the views at y. */
export function views(paper: Paper, { patientCase, plan }: TheatreSheetFacts, y: number): void {
  const construct = constructOf(plan);
  let x = paper.left;
  for (const figure of viewFigures(patientCase, construct)) {
    oneView(paper, figure, x, y);
    x += viewWidthMm(figure);
  }
  const section = sectionFigure(patientCase, construct);
  if (section && x + SECTION_MM <= paper.right + 1) sectionAt(paper, section, y);
}

const viewWidthMm = ({ extent: { w } }: ViewFigure): number => RULER_MM + (w[1] - w[0]) + LABEL_MM + 3;

function oneView(paper: Paper, figure: ViewFigure, x: number, y: number): void {
  const { title, note, sense } = SIDES[figure.view];
  paper.part('H2', () => paper.text(title, [x, y], { face: 'heading', size: 13 }));
  paper.part('P', () => paper.text(note, [x, y + 5.6], { size: 8.5 }));
  const { s, w } = figure.extent;
  const originX = sense > 0 ? x + RULER_MM - w[0] : x + LABEL_MM + w[1];
  viewDrawing(paper, figure, { originMm: [originX, y + HEADING_MM - s[0]], sense });
}

function sectionAt(paper: Paper, section: SectionFigure, y: number): void {
  const x = paper.right - SECTION_MM / 2;
  paper.part('H2', () =>
    paper.text(`Section at P${section.pin}`, [paper.right - SECTION_MM, y], { face: 'heading', size: 13 }),
  );
  sectionDrawing(paper, section, [x, y + 8], SECTION_MM);
}

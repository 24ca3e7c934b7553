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
const SIDES = {
  craniocaudal: { title: 'Craniocaudal', note: 'medial to the right', sense: 1 },
  mediolateral: { title: 'Mediolateral', note: 'cranial to the left', sense: -1 },
} as const;

/** Draws the views at y; returns the y below the longest of them. */
export function views(paper: Paper, { patientCase, plan }: TheatreSheetFacts, y: number): number {
  const figures = viewFigures(patientCase, constructOf(plan));
  let x = paper.left;
  for (const figure of figures) {
    oneView(paper, figure, x, y);
    x += viewWidthMm(figure);
  }
  const section = sectionFigure(patientCase, constructOf(plan));
  const sectionBottom = section && x + SECTION_MM <= paper.right + 1 ? sectionAt(paper, section, y) : y;
  return Math.max(sectionBottom, y + HEADING_MM + Math.max(...figures.map((f) => f.extent.s[1] - f.extent.s[0]))) + 3;
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

function sectionAt(paper: Paper, section: SectionFigure, y: number): number {
  const x = paper.right - SECTION_MM / 2;
  paper.part('H2', () =>
    paper.text(`Section at P${section.pin}`, [paper.right - SECTION_MM, y], { face: 'heading', size: 13 }),
  );
  return sectionDrawing(paper, section, [x, y + 8], SECTION_MM);
}

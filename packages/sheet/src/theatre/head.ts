/** The sheet's head: what it is, whose, and that it is drawn at 1:1. */
import type { Paper } from '../paper/paper.ts';
import type { TheatreSheetFacts } from './facts.ts';
import { patientLine } from './words.ts';

const PATIENT_WORDS = { size: 11, width: 118 };

const patientWords = ({ patientCase, title }: TheatreSheetFacts): string =>
  `${title.patient}: ${patientLine(patientCase, title.weighed)}`;

/** Height of the head, mm: a long name takes a second line. */
export const headHeightMm = (paper: Paper, facts: TheatreSheetFacts): number =>
  11 + paper.textHeight(patientWords(facts), PATIENT_WORDS);

/** Draws the head at the top of the page. */
export function head(paper: Paper, facts: TheatreSheetFacts): void {
  const y = paper.top;
  paper.part('H1', () => paper.text('Theatre sheet', [paper.left, y - 2], { face: 'heading', size: 21 }));
  paper.part('P', () => paper.text('drawn 1:1', [paper.right, y], { face: 'strong', size: 15, align: 'right' }));
  paper.part('P', () => paper.text(patientWords(facts), [paper.left, y + 8], PATIENT_WORDS));
  const planned = [`plan “${facts.plan.label}”`, facts.title.planned].filter(Boolean).join(', ');
  paper.part('P', () => paper.text(planned, [paper.right, y + 8], { size: 9.5, align: 'right' }));
  const below = y + headHeightMm(paper, facts) - 2;
  paper.decoration(() => paper.line([paper.left, below], [paper.right, below], 0.5));
}

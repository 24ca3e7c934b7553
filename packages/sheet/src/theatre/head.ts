/** The sheet's head: what it is, whose, and that it is drawn at 1:1. */
import type { Paper } from '../paper/paper.ts';
import type { TheatreSheetFacts } from './facts.ts';
import { patientLine } from './words.ts';

/** Draws the head; returns the y below it. */
export function head(paper: Paper, { patientCase, plan, title }: TheatreSheetFacts): number {
  const y = paper.top;
  paper.part('H1', () => paper.text('Theatre sheet', [paper.left, y - 2], { face: 'heading', size: 21 }));
  paper.part('P', () => paper.text('drawn 1:1', [paper.right, y], { face: 'strong', size: 15, align: 'right' }));
  const patient = `${title.patient}: ${patientLine(patientCase, title.weighed)}`;
  paper.part('P', () => paper.text(patient, [paper.left, y + 8], { size: 11, width: 118 }));
  const planned = [`plan “${plan.label}”`, title.planned].filter(Boolean).join(', ');
  paper.part('P', () => paper.text(planned, [paper.right, y + 8], { size: 9.5, align: 'right' }));
  const below = y + 9 + paper.textHeight(patient, { size: 11, width: 118 });
  paper.decoration(() => paper.line([paper.left, below], [paper.right, below], 0.5));
  return below + 2;
}

/** Head and foot of the dose papers. */
import { BUILD } from '../paper/build.ts';
import type { Paper } from '../paper/paper.ts';
import { type DosePaperFacts, localMoment } from './dose-facts.ts';

const FOOT_MM = 15;
const CAUTION =
  'Each dose was chosen and signed by the veterinary surgeon named, who answers for it; local law and the data sheet come first. Read every vial; never flush through a hub with a separate needle. Most use in wild species is outside a product’s authorisation.';

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** `Hedgehog 26-043`. */
export const patientName = ({ state }: DosePaperFacts): string =>
  `${capital(state.patient?.value.species ?? 'patient')} ${state.patient?.value.number ?? ''}`.trim();

/** Draws the head; gives the y below it. */
export function doseHead(paper: Paper, facts: DosePaperFacts, title: string): number {
  const { state, made, minutesEastOfUtc } = facts;
  const y = paper.top;
  const patient = state.patient?.value;
  const mass = patient?.massG == null ? 'not weighed' : `${patient.massG} g`;
  const weighed = patient?.weighedAt ? ` on ${localMoment(patient.weighedAt, minutesEastOfUtc)}` : '';
  paper.part('H1', () => paper.text(title, [paper.left, y - 2], { face: 'heading', size: 21 }));
  if (patient?.demonstration)
    paper.part('P', () => paper.text('DEMONSTRATION', [paper.right, y], { face: 'strong', size: 12, align: 'right' }));
  const who = [patientName(facts), patient?.name, `${mass}${weighed}`].filter(Boolean).join(', ');
  paper.part('P', () => paper.text(who, [paper.left, y + 8], { size: 11, face: 'strong' }));
  const printed = `printed ${localMoment(made.toISOString(), minutesEastOfUtc)}`;
  paper.part('P', () => paper.text(printed, [paper.right, y + 8.4], { size: 9.5, align: 'right' }));
  paper.decoration(() => paper.line([paper.left, y + 14], [paper.right, y + 14], 0.5));
  return y + 16;
}

/** Draws the foot; gives the y of its top. */
export function doseFoot(paper: Paper, { version }: DosePaperFacts, page: number): number {
  const y = paper.bottom - FOOT_MM;
  paper.decoration(() => paper.line([paper.left, y], [paper.right, y], 0.25));
  paper.part('P', () =>
    paper.text(CAUTION, [paper.left, y + 1.5], { size: 8.5, width: paper.right - paper.left - 28 }),
  );
  paper.part('P', () => paper.text(`page ${page} · ${version}`, [paper.right, y + 1.5], { size: 8.5, align: 'right' }));
  paper.part('P', () => paper.text(BUILD, [paper.right, y + 5.5], { size: 8.5, align: 'right' }));
  return y;
}

/** Head and foot of the papers of a patient's course: discharge, release, letters. */

import { type DosePaperFacts, localMoment } from '../doses/dose-facts.ts';
import { patientName } from '../doses/dose-frame.ts';
import { BUILD } from '../paper/build.ts';
import { Flow } from '../paper/flow.ts';
import { Paper } from '../paper/paper.ts';

/** All that such a paper is made of is the record. */
export type CoursePaperFacts = DosePaperFacts;

const FOOT_MM = 12;

export interface CoursePaper {
  readonly paper: Paper;
  readonly flow: Flow;
}

/** Opens a paper of that title, with the patient below it. `caution` stands at the foot of every page. */
export function coursePaper(facts: CoursePaperFacts, title: string, caution: string): CoursePaper {
  const paper = new Paper({ title: `${title}, ${patientName(facts)}`, size: facts.size ?? 'A4', made: facts.made });
  const flow = new Flow(paper, {
    head: (page) => head(page, facts, title),
    foot: (page, number) => foot(page, facts, number, caution),
  });
  return { paper, flow };
}

function head(paper: Paper, facts: CoursePaperFacts, title: string): number {
  const { state, made, minutesEastOfUtc } = facts;
  const y = paper.top;
  const patient = state.patient?.value;
  const who = [patientName(facts), patient?.name, `${patient?.side ?? ''} ${patient?.bone ?? ''}`.trim()];
  paper.part('H1', () => paper.text(title, [paper.left, y - 2], { face: 'heading', size: 21 }));
  if (patient?.demonstration)
    paper.part('P', () => paper.text('DEMONSTRATION', [paper.right, y], { face: 'strong', size: 12, align: 'right' }));
  paper.part('P', () => paper.text(who.filter(Boolean).join(', '), [paper.left, y + 8], { size: 11, face: 'strong' }));
  const printed = `printed ${localMoment(made.toISOString(), minutesEastOfUtc)}`;
  paper.part('P', () => paper.text(printed, [paper.right, y + 8.4], { size: 9.5, align: 'right' }));
  paper.decoration(() => paper.line([paper.left, y + 14], [paper.right, y + 14], 0.5));
  return y + 17;
}

function foot(paper: Paper, { version }: CoursePaperFacts, page: number, caution: string): number {
  const y = paper.bottom - FOOT_MM;
  paper.decoration(() => paper.line([paper.left, y], [paper.right, y], 0.25));
  paper.part('P', () =>
    paper.text(caution, [paper.left, y + 1.5], { size: 8.5, width: paper.right - paper.left - 28 }),
  );
  paper.part('P', () => paper.text(`page ${page} · ${version}`, [paper.right, y + 1.5], { size: 8.5, align: 'right' }));
  paper.part('P', () => paper.text(BUILD, [paper.right, y + 5.5], { size: 8.5, align: 'right' }));
  return y;
}

const DAY = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' });

/** `Friday 27 November` for `2026-11-27`. */
export const dayInWords = (date: string): string => DAY.format(new Date(`${date}T12:00:00Z`)).replace(',', '');

const BOX_MM = 7;

/** Empty boxes side by side, each with its word above. */
export function boxes({ paper, flow }: CoursePaper, words: readonly string[]): void {
  const width = (paper.right - paper.left) / words.length;
  const top = flow.room(BOX_MM + 8);
  words.forEach((word, i) => {
    const x = paper.left + i * width;
    paper.part('P', () => paper.text(word, [x, top], { size: 8.5 }));
    paper.decoration(() => paper.rect([x, top + 4.6], width - 3, BOX_MM, { line: 0.25 }));
  });
}

/** The implant record: what was put in, from which stock, by whom, and when each part came out again. */
import type { Case, Plan } from '@bonewright/construct';
import { Flow } from '../paper/flow.ts';
import { Paper } from '../paper/paper.ts';
import type { TheatreSheetFacts } from '../theatre/facts.ts';
import { titleBlock } from '../theatre/foot.ts';
import { figure, patientLine, wireWords } from '../theatre/words.ts';

/** Makes the PDF of the implant record, its boxes empty for ink. */
export async function implantRecord(facts: TheatreSheetFacts): Promise<Uint8Array> {
  const { patientCase, plan, title } = facts;
  const paper = new Paper({ title: `Implant record, ${title.patient}`, size: title.size ?? 'A4', made: title.made });
  const flow = new Flow(paper, {
    head: (page) => recordHead(page, facts),
    foot: (page, number) => {
      titleBlock(page, title, `page ${number}`);
      return page.bottom - 18;
    },
  });
  flow.paragraph(
    'Write the batch from the packet, where it was really placed, and the day it came out. What is still in the animal at release is written here too.',
  );
  implants(flow, paper, plan, patientCase);
  return paper.finish();
}

function recordHead(paper: Paper, { patientCase, title }: TheatreSheetFacts): number {
  const y = paper.top;
  paper.part('H1', () => paper.text('Implant record', [paper.left, y - 2], { face: 'heading', size: 21 }));
  const who = `${title.patient}: ${patientLine(patientCase, title.weighed)}`;
  paper.part('P', () => paper.text(who, [paper.left, y + 8], { size: 10 }));
  paper.decoration(() => paper.line([paper.left, y + 14], [paper.right, y + 14], 0.5));
  return y + 15;
}

const BOXES = ['batch', 'placed at, mm', 'came out, day', 'by, sign'];
const ROW_MM = 9;
const FIRST_MM = 58;

function implants(flow: Flow, paper: Paper, plan: Plan, patientCase: Case): void {
  flow.heading('Implants');
  const boxMm = (paper.right - paper.left - FIRST_MM) / BOXES.length;
  const top = flow.room(6);
  BOXES.forEach((word, i) => {
    paper.part('P', () => paper.text(word, [paper.left + FIRST_MM + i * boxMm, top], { size: 8.5, face: 'strong' }));
  });
  for (const words of rows(plan, patientCase)) {
    const y = flow.room(ROW_MM);
    paper.part('P', () => paper.text(words, [paper.left, y + 2], { size: 10 }));
    paper.decoration(() => {
      for (let i = 0; i < BOXES.length; i += 1) {
        paper.rect([paper.left + FIRST_MM + i * boxMm, y + 0.8], boxMm - 2, 7, { line: 0.25 });
      }
    });
  }
}

function rows(plan: Plan, patientCase: Case): string[] {
  return [
    ...plan.pins.map((pin, i) => `P${i + 1}  ${wireWords(pin, patientCase)} mm, planned at ${figure(pin.sMm)}`),
    ...(plan.im ? [`IM pin  ${figure(plan.im.diameterMm)} mm`] : []),
    ...plan.column.map((c) => `Column  ${figure(c.diameterMm)} mm, ${figure(c.massG)} g`),
  ];
}

/** The implant record: what was put in, from which stock, by whom, and when each part came out again. */
import type { Case, Plan } from '@bonewright/construct';
import { Flow } from '../paper/flow.ts';
import { Paper } from '../paper/paper.ts';
import type { TheatreSheetFacts, UsedBatch } from '../theatre/facts.ts';
import { titleBlock } from '../theatre/foot.ts';
import { figure, patientLine, wireWords } from '../theatre/words.ts';

/** Makes the PDF of the implant record: batches as far as the stock knows them, the other boxes empty for ink. */
export async function implantRecord(facts: TheatreSheetFacts): Promise<Uint8Array> {
  const { title } = facts;
  const paper = new Paper({ title: `Implant record, ${title.patient}`, size: title.size ?? 'A4', made: title.made });
  const flow = new Flow(paper, {
    head: (page) => recordHead(page, facts),
    foot: (page, number) => {
      titleBlock(page, title, `page ${number}`);
      return page.bottom - 18;
    },
  });
  flow.paragraph(
    'A batch that is printed is what the stock says was used: compare it with the packet. Write in the others, where each was really placed, and the day it came out. What is still in the animal at release is written here too.',
  );
  implants(flow, paper, facts);
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
/** Long batches take two lines of it. */
const SMALL = 5.5;

function implants(flow: Flow, paper: Paper, { plan, patientCase, used = [] }: TheatreSheetFacts): void {
  flow.heading('Implants');
  const boxMm = (paper.right - paper.left - FIRST_MM) / BOXES.length;
  const top = flow.room(6);
  BOXES.forEach((word, i) => {
    paper.part('P', () => paper.text(word, [paper.left + FIRST_MM + i * boxMm, top], { size: 8.5, face: 'strong' }));
  });
  for (const { words, batch } of rows(plan, patientCase, used)) {
    const y = flow.room(ROW_MM);
    paper.part('P', () => paper.text(words, [paper.left, y + 2], { size: 10 }));
    paper.decoration(() => {
      for (let i = 0; i < BOXES.length; i += 1) {
        paper.rect([paper.left + FIRST_MM + i * boxMm, y + 0.8], boxMm - 2, 7, { line: 0.25 });
      }
    });
    if (batch) {
      const fit = { size: 9.5, width: boxMm - 4 };
      const size = paper.textWidth(batch, fit) > fit.width ? SMALL : fit.size;
      paper.part('P', () =>
        paper.text(batch, [paper.left + FIRST_MM + 1, y + (size === SMALL ? 1.2 : 2)], { ...fit, size }),
      );
    }
  }
}

interface Row {
  readonly words: string;
  /** Empty where the stock does not say. */
  readonly batch: string;
}

function rows(plan: Plan, patientCase: Case, used: readonly UsedBatch[]): Row[] {
  // Another size than planned went in: its batch is not this row's to print.
  const of = (as: string, drawerId: string) =>
    used.find((use) => use.as === as && use.drawerId === drawerId)?.batch ?? '';
  const putty = [...new Set(used.filter(({ as }) => as === 'putty').map(({ batch }) => batch))].filter(Boolean);
  return [
    ...plan.pins.map((pin, i) => ({
      words: `P${i + 1}  ${wireWords(pin, patientCase)}, planned at ${figure(pin.sMm)} mm`,
      batch: of(`P${i + 1}`, pin.drawerId),
    })),
    ...(plan.im ? [{ words: `IM pin  ${figure(plan.im.diameterMm)} mm`, batch: of('IM pin', plan.im.drawerId) }] : []),
    ...plan.column.map((c) => ({
      words: `Column  ${figure(c.diameterMm)} mm, ${figure(c.massG)} g`,
      batch: putty.join(', '),
    })),
  ];
}

/** The dose sheet: every signed dose of a case, how to draw it up, and boxes for who gave it and when. */
import { Flow } from '../paper/flow.ts';
import { Paper } from '../paper/paper.ts';
import { type DosePaperFacts, localMoment, type PrintedDose, signedDoses } from './dose-facts.ts';
import { doseFoot, doseHead, patientName } from './dose-frame.ts';
import {
  doseWords,
  drawSpelled,
  drawWords,
  recipeWords,
  remarkWords,
  roundingWords,
  routeWords,
} from './dose-words.ts';

const LEFT_MM = 58;
const SMALL = { size: 9 };

/** Makes the PDF. Throws InputError where a dose of the case is not signed, or was signed for a mass that no longer holds. */
export async function doseSheet(facts: DosePaperFacts): Promise<Uint8Array> {
  const doses = signedDoses(facts, ({ line }) => line.use !== 'emergency');
  const paper = new Paper({ title: `Dose sheet, ${patientName(facts)}`, size: facts.size ?? 'A4', made: facts.made });
  const flow = new Flow(paper, {
    head: (page) => doseHead(page, facts, 'Dose sheet'),
    foot: (page, number) => doseFoot(page, facts, number),
  });
  for (const dose of doses) block(paper, flow, facts, dose);
  return paper.finish();
}

/** Left what to draw, right how it came about; never broken across pages. */
function block(paper: Paper, flow: Flow, facts: DosePaperFacts, printed: PrintedDose): void {
  const { value } = printed.signature;
  const width = paper.right - paper.left - LEFT_MM;
  const lines = [
    { words: doseWords(value), face: 'strong' as const },
    { words: recipeWords(value), face: value.recipe ? ('strong' as const) : ('regular' as const) },
    { words: roundingWords(value), face: 'regular' as const },
    ...remarkWords(value).map((words) => ({ words, face: 'regular' as const })),
    { words: signedWords(facts, printed), face: 'regular' as const },
  ];
  const heights = lines.map(({ words, face }) => paper.textHeight(words, { ...SMALL, face, width }) + 0.8);
  const height = Math.max(40, heights.reduce((sum, each) => sum + each, 0) + 5);
  const top = flow.room(height);
  paper.part('H2', () => paper.text(value.line.drug, [paper.left, top], { face: 'heading', size: 14 }));
  paper.part('P', () => paper.text(drawWords(value), [paper.left, top + 7], { face: 'bold', size: 22 }));
  paper.part('P', () => paper.text(drawSpelled(value), [paper.left, top + 16.5], { size: 9.5, width: LEFT_MM - 4 }));
  const spelledMm = paper.textHeight(drawSpelled(value), { size: 9.5, width: LEFT_MM - 4 });
  paper.part('P', () =>
    paper.text(routeWords(value), [paper.left, top + 17.5 + spelledMm], {
      face: 'strong',
      size: 11,
      width: LEFT_MM - 4,
    }),
  );
  let y = top;
  lines.forEach(({ words, face }, i) => {
    const at = y;
    paper.part('P', () => paper.text(words, [paper.left + LEFT_MM, at], { ...SMALL, face, width }));
    y += heights[i]!;
  });
  givenBox(paper, facts, printed, top + height - 11.5);
  paper.decoration(() => paper.line([paper.left, top + height - 1.5], [paper.right, top + height - 1.5], 0.25));
}

function signedWords({ minutesEastOfUtc }: DosePaperFacts, { signature }: PrintedDose): string {
  const second = signature.value.secondPerson;
  return `Signed by ${signature.by}, ${localMoment(signature.at, minutesEastOfUtc)}${second ? `; seen by ${second} as well` : ''}.`;
}

function givenBox(paper: Paper, { minutesEastOfUtc }: DosePaperFacts, { dose }: PrintedDose, y: number): void {
  if (dose.given) {
    const words = `Given ${localMoment(dose.given.value.at, minutesEastOfUtc)}, ${dose.given.by}`;
    paper.part('P', () => paper.text(words, [paper.left, y + 3], { ...SMALL, face: 'strong', width: LEFT_MM - 4 }));
    return;
  }
  ['given at', 'by'].forEach((word, i) => {
    const x = paper.left + i * 27;
    paper.part('P', () => paper.text(word, [x, y - 1.8], { size: 8.5 }));
    paper.decoration(() => paper.rect([x, y + 3], 25, 6.5, { line: 0.25 }));
  });
}

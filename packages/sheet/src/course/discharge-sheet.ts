/** The discharge sheet: what a carer does, when, what to look for, when to ring. In plain words, in large type. */
import type { DoseInCase } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import { doseWords, drawSpelled, drawWords, recipeWords, routeWords } from '../doses/dose-words.ts';
import { type CoursePaper, type CoursePaperFacts, coursePaper, dayInWords } from './course-frame.ts';

type Aftercare = NonNullable<CoursePaperFacts['state']['care']['aftercare']>;
type Task = Aftercare['value']['tasks'][number];

const CAUTION =
  'Care of external fixators rests on opinion: no trial of it in animals was found. Do only what is written here; whoever signed answers for it. Local law and the vet come first.';
const LARGE = { size: 12 };

/** Makes the PDF. Throws InputError where no aftercare is written, or where it names a dose that no vet signed. */
export async function dischargeSheet(facts: CoursePaperFacts): Promise<Uint8Array> {
  const { aftercare } = facts.state.care;
  if (!aftercare) throw new InputError('no aftercare is written', 'aftercare', 'a vet writes it at Recovery first');
  const tasks = aftercare.value.tasks.map((task) => ({ task, dose: doseOf(facts, task) }));
  const on = coursePaper(facts, 'Going home', CAUTION);
  ring(on, aftercare);
  on.flow.heading('What to do');
  for (const { task, dose } of tasks) taskLines(on, task, dose);
  listed(on, 'What to look for every day', aftercare.value.lookFor);
  if (aftercare.value.housing) listed(on, 'How it lives', [aftercare.value.housing]);
  on.flow.heading('Next look');
  on.flow.paragraph(
    aftercare.value.recheckOn ? `On ${dayInWords(aftercare.value.recheckOn)}.` : 'No day is set: ask for one.',
    LARGE,
  );
  on.flow.paragraph(`Written and signed by ${aftercare.by}.`);
  return on.paper.finish();
}

function doseOf({ state }: CoursePaperFacts, { doseId, what }: Task): DoseInCase | null {
  if (doseId === null) return null;
  const dose = state.doses.find((one) => one.doseId === doseId);
  if (!dose?.signed || dose.voided)
    throw new InputError(
      `the dose of "${what}" is not signed, or was voided`,
      'aftercare',
      'sign it, or write the aftercare again',
    );
  return dose;
}

function ring({ flow }: CoursePaper, { value: { ringWhen, phone } }: Aftercare): void {
  flow.heading('Ring us now if');
  for (const line of ringWhen) flow.paragraph(`•  ${line}`, { size: 13, face: 'strong' });
  flow.paragraph(phone ? `Ring ${phone}` : 'Write the number here: ____________________', { size: 18, face: 'bold' });
}

function taskLines({ flow }: CoursePaper, { what, when }: Task, dose: DoseInCase | null): void {
  const signed = dose?.signed?.value;
  if (!signed) {
    flow.paragraph(`•  ${what}: ${when}`, LARGE);
    return;
  }
  flow.paragraph(`•  ${what}: ${drawWords(signed)} (${drawSpelled(signed)}), ${routeWords(signed)}, ${when}`, {
    size: 13,
    face: 'strong',
  });
  flow.paragraph(`${doseWords(signed)}. ${recipeWords(signed)} Signed by ${dose?.signed?.by}.`);
}

function listed({ flow }: CoursePaper, title: string, lines: readonly string[]): void {
  flow.heading(title);
  for (const line of lines) flow.paragraph(`•  ${line}`, LARGE);
}

/** The practice's record as a story: one sentence an event, past tense. */
import { isKnownOfPractice, type PracticeEvent, type RecordedPracticeEvent } from './events.ts';
import { isOfMedicines, medicineSentence } from './kinds/medicines.ts';
import { isOfStock } from './kinds/stock.ts';
import { stockSentence } from './kinds/stock-sentence.ts';

/** What happened, in words, without who and when. */
export function practiceSentenceOf(event: RecordedPracticeEvent): string {
  if (!isKnownOfPractice(event)) return `Something that needs a newer version of Bonewright to read (${event.kind}).`;
  const said = sentence(event);
  return event.why === undefined ? said : `${said} Why: ${event.why}`;
}

function sentence(event: PracticeEvent): string {
  if (isOfStock(event)) return stockSentence(event);
  if (isOfMedicines(event)) return medicineSentence(event);
  return 'Everything of the demonstration taken out.';
}

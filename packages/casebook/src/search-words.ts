/** What of a record can be found by its words, and when two texts share one. The same for every database. */
import type { Patient } from './case-state.ts';
import type { RecordedEvent } from './events.ts';
import { sentenceOf } from './story.ts';

const LONGEST_WORD = 60;
const MOST_CHARACTERS = 400_000;
const MARKS = /\p{M}+/gu;
const NOT_IN_WORDS = /[^\p{L}\p{N}]+/u;
/** Names of values that nobody types: keys, hashes, moments. */
const UNSPOKEN = /(^id|Id|Ids|sha256|At|^at|^kind)$/;

/** A text without capitals and accents: what is compared. */
const plain = (text: string): string => text.normalize('NFKD').replace(MARKS, '').toLowerCase();

/**
 * The words by which a text is found, each once: those between blanks, their parts, and their parts written together,
 * so that `26-041` is found by `26-041`, `26041` and `041`. At most 60 characters of each; very long texts are cut.
 */
export function wordsOf(text: string): string[] {
  const words = new Set<string>();
  for (const chunk of plain(text.slice(0, MOST_CHARACTERS)).split(/\s+/u)) {
    const parts = chunk.split(NOT_IN_WORDS).filter(Boolean);
    for (const part of [...parts, parts.join('')]) if (part) words.add(part.slice(0, LONGEST_WORD));
  }
  return [...words];
}

/** What was asked for: the beginning of one word for each text between blanks. All must be found. */
export function askedWords(question: string): string[] {
  const chunks = plain(question.slice(0, MOST_QUESTION)).split(/\s+/u);
  const asked = chunks.map((chunk) => chunk.split(NOT_IN_WORDS).join('').slice(0, LONGEST_WORD)).filter(Boolean);
  return [...new Set(asked)].slice(0, MOST_ASKED);
}
const MOST_QUESTION = 500;
const MOST_ASKED = 8;

/** Which of the asked words begin a word of this text. */
export function foundIn(text: string, asked: readonly string[]): string[] {
  const words = wordsOf(text);
  return asked.filter((start) => words.some((word) => word.startsWith(start)));
}

/** By what a patient itself is known. */
export function namesOf({ number, name, species }: Pick<Patient, 'number' | 'name' | 'species'>): string {
  return `${number} ${name} ${species}`;
}

/** One event as a line in which words are looked for: its sentence, who signed it, and whatever else was typed in it. */
export function searchLine(event: RecordedEvent): string {
  const sentence = sentenceOf(event);
  const more = [...textsIn(event.payload, '')].filter((text) => !sentence.includes(text));
  return [sentence, ...new Set(more)].join(' · ');
}

function* textsIn(value: unknown, key: string): Generator<string> {
  if (typeof value === 'string') {
    if (!UNSPOKEN.test(key) && /\p{L}|\p{N}/u.test(value)) yield value;
  } else if (Array.isArray(value)) {
    // Traces and profiles are long lists of numbers.
    if (typeof value[0] !== 'number') for (const each of value) yield* textsIn(each, key);
  } else if (typeof value === 'object' && value !== null) {
    for (const [name, each] of Object.entries(value)) yield* textsIn(each, name);
  }
}

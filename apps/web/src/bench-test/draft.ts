/** The readings of a bench test as they are typed, and what they come to. */
import { type BenchResult, type BenchTest, benchTest, type Reading } from '@bonewright/construct';
import { faultLine, InputError } from '@bonewright/fault';
import { readNumber } from '../form/read-number.ts';

export interface BenchDraft {
  readonly shape: 'flat' | 'round';
  readonly widthMm: string;
  readonly heightMm: string;
  readonly diameterMm: string;
  readonly spanMm: string;
  /** How well a length is read, as a standard deviation. */
  readonly lengthSdMm: string;
  readonly sagSdMm: string;
  readonly hung: readonly { readonly massG: string; readonly sagMm: string }[];
  /** Empty where it was not broken. */
  readonly breakingG: string;
  readonly breakingSdG: string;
}

const ROW = { massG: '', sagMm: '' };

export const EMPTY_DRAFT: BenchDraft = {
  shape: 'round',
  widthMm: '',
  heightMm: '',
  diameterMm: '',
  spanMm: '',
  lengthSdMm: '',
  sagSdMm: '',
  hung: [ROW, ROW, ROW],
  breakingG: '',
  breakingSdG: '',
};

/** Reads what this device kept; an empty draft where that is none. */
export function readBenchDraft(kept: unknown): BenchDraft {
  if (typeof kept !== 'object' || kept === null) return EMPTY_DRAFT;
  const text = (key: string): string => {
    const value = Object.entries(kept).find(([name]) => name === key)?.[1];
    return typeof value === 'string' ? value : '';
  };
  const hung = 'hung' in kept && Array.isArray(kept.hung) ? kept.hung.map(rowOf) : EMPTY_DRAFT.hung;
  return {
    shape: text('shape') === 'flat' ? 'flat' : 'round',
    widthMm: text('widthMm'),
    heightMm: text('heightMm'),
    diameterMm: text('diameterMm'),
    spanMm: text('spanMm'),
    lengthSdMm: text('lengthSdMm'),
    sagSdMm: text('sagSdMm'),
    hung: hung.length > 0 ? hung : EMPTY_DRAFT.hung,
    breakingG: text('breakingG'),
    breakingSdG: text('breakingSdG'),
  };
}

function rowOf(kept: unknown): BenchDraft['hung'][number] {
  if (typeof kept !== 'object' || kept === null) return ROW;
  const { massG, sagMm } = { ...ROW, ...kept };
  return { massG: String(massG), sagMm: String(sagMm) };
}

export type BenchAnswer =
  | { readonly result: BenchResult; readonly why: null }
  | { readonly result: null; readonly why: string | null };

/** What the readings come to; `why` says what is wrong with them, null where some are not typed yet. */
export function answerOf(draft: BenchDraft): BenchAnswer {
  const test = testOf(draft);
  if (!test) return { result: null, why: null };
  try {
    return { result: benchTest(test), why: null };
  } catch (error) {
    if (error instanceof InputError) return { result: null, why: faultLine(error) };
    throw error;
  }
}

/** Null while something needed is missing or is no number. */
function testOf(draft: BenchDraft): BenchTest | null {
  const lengthSd = readNumber(draft.lengthSdMm);
  const sagSdMm = readNumber(draft.sagSdMm);
  const spanMm = readNumber(draft.spanMm);
  const hung = draft.hung.filter(({ massG, sagMm }) => massG.trim() !== '' || sagMm.trim() !== '');
  const sags = hung.map(({ massG, sagMm }) => ({ massG: readNumber(massG), sagMm: readNumber(sagMm) }));
  const whole = sags.flatMap(({ massG, sagMm }) => (massG === null || sagMm === null ? [] : [{ massG, sagMm }]));
  if (lengthSd === null || sagSdMm === null || spanMm === null || whole.length < sags.length || whole.length === 0)
    return null;
  const bar = barOf(draft, lengthSd);
  const breaking = breakingOf(draft);
  if (!bar || breaking === 'not whole') return null;
  return { bar, spanMm: { value: spanMm, sd: lengthSd }, sags: whole, sagSdMm, breakingMassG: breaking };
}

function barOf({ shape, widthMm, heightMm, diameterMm }: BenchDraft, sd: number): BenchTest['bar'] | null {
  const [width, height, diameter] = [widthMm, heightMm, diameterMm].map(readNumber);
  if (shape === 'round') return diameter == null ? null : { kind: 'round', diameterMm: { value: diameter, sd } };
  if (width == null || height == null) return null;
  return { kind: 'flat', widthMm: { value: width, sd }, heightMm: { value: height, sd } };
}

function breakingOf({ breakingG, breakingSdG }: BenchDraft): Reading | null | 'not whole' {
  if (breakingG.trim() === '') return null;
  const value = readNumber(breakingG);
  const sd = readNumber(breakingSdG);
  return value === null || sd === null ? 'not whole' : { value, sd };
}

/**
 * Reads the values of data elements. `needed...` refuses what is absent or malformed, by name;
 * the others treat junk in optional attributes as absent and say so in `warnings` (PS3.5 section 6.2 for the forms).
 */
import { InputError } from '@bonewright/fault';
import { printable, viewOf } from '../bytes.ts';
import { EXPORT_AGAIN } from '../limits.ts';
import type { DataSet } from './elements.ts';
import { type Keyword, placeOf, TAGS } from './tags.ts';

/** Reads one data set; the warnings gather what was set aside. */
export interface Reader {
  readonly set: DataSet;
  readonly warnings: string[];
}

export const bytesOf = (set: DataSet, keyword: Keyword): Uint8Array | undefined => {
  const element = set.elements[TAGS[keyword]];
  return element && set.bytes.subarray(element.dataOffset, element.dataOffset + element.length);
};

/** The number of a two-byte element; undefined where absent. @throws InputError for any other length or kind. */
export function unsigned16(set: DataSet, keyword: Keyword): number | undefined {
  const bytes = bytesOf(set, keyword);
  if (!bytes) return undefined;
  const vr = set.elements[TAGS[keyword]]?.vr;
  if (bytes.length !== 2 || (vr !== undefined && vr !== 'US'))
    throw new InputError(`${keyword} is not one whole number of two bytes`, placeOf(keyword), EXPORT_AGAIN);
  return viewOf(bytes).getUint16(0, set.littleEndian);
}

export function neededUnsigned16(set: DataSet, keyword: Keyword): number {
  const value = unsigned16(set, keyword);
  if (value === undefined) throw new InputError(`${keyword} is missing`, placeOf(keyword), EXPORT_AGAIN);
  return value;
}

/** The whole of a text value, padding taken off; empty where absent. */
export function text(set: DataSet, keyword: Keyword): string {
  const bytes = bytesOf(set, keyword);
  return bytes ? decoder(set).decode(bytes).replace(/\0/g, '').trim() : '';
}

/** The parts of a text value between backslashes; none where absent. */
export const texts = (set: DataSet, keyword: Keyword): string[] => {
  const whole = text(set, keyword);
  return whole === '' ? [] : whole.split('\\').map((part) => part.trim());
};

/** Decimal numbers of a text value; none where absent, none and a warning where any part is no number. */
export function decimals({ set, warnings }: Reader, keyword: Keyword): number[] {
  const parts = texts(set, keyword);
  const numbers = parts.map((part) =>
    /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(part) ? Number(part) : Number.NaN,
  );
  if (numbers.every(Number.isFinite)) return numbers;
  warnings.push(`${placeOf(keyword)} holds "${printable(parts.join('\\'))}", which is no number: it was set aside`);
  return [];
}

/** The one decimal number of a text value; undefined where absent or junk. */
export const decimal = (reader: Reader, keyword: Keyword): number | undefined => decimals(reader, keyword)[0];

/** The data sets of a sequence's items, in the character set of the whole; none where absent or not a sequence. */
export function items(set: DataSet, keyword: Keyword): DataSet[] {
  const found = set.elements[TAGS[keyword]]?.items ?? [];
  const characters = set.elements[TAGS.SpecificCharacterSet];
  const inherited = characters ? { [TAGS.SpecificCharacterSet]: characters } : {};
  return found.flatMap(({ dataSet }) => (dataSet ? [{ ...set, elements: { ...inherited, ...dataSet.elements } }] : []));
}

/** Defined terms of Specific Character Set (PS3.3 C.12.1.1.2) that name one character set throughout. */
const CHARACTER_SETS: Record<string, string> = {
  'ISO_IR 192': 'utf-8',
  'ISO_IR 101': 'iso-8859-2',
  'ISO_IR 109': 'iso-8859-3',
  'ISO_IR 110': 'iso-8859-4',
  'ISO_IR 144': 'iso-8859-5',
  'ISO_IR 127': 'iso-8859-6',
  'ISO_IR 126': 'iso-8859-7',
  'ISO_IR 138': 'iso-8859-8',
  'ISO_IR 13': 'shift_jis',
  GB18030: 'gb18030',
  GBK: 'gbk',
};

function decoder(set: DataSet): TextDecoder {
  const element = set.elements[TAGS.SpecificCharacterSet];
  const named = element
    ? String.fromCharCode(...set.bytes.subarray(element.dataOffset, element.dataOffset + Math.min(element.length, 64)))
    : '';
  return new TextDecoder(CHARACTER_SETS[named.replace(/\0/g, '').trim()] ?? 'windows-1252');
}

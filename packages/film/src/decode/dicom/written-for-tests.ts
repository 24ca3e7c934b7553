/** Writes small part 10 files for tests: a whole film by default, any element changed, added or left out. */
import { joined } from '../bytes.ts';
import { type Keyword, TAGS } from './tags.ts';

type Value = string | number | Uint8Array | readonly (readonly [Keyword, Value])[];

/** VRs of the elements whose values are not text. */
const VRS: Partial<Record<Keyword, string>> = {
  PixelData: 'OW',
  PixelIntensityRelationshipSign: 'SS',
  LUTDescriptor: 'US',
  LUTData: 'OW',
  ModalityLUTSequence: 'SQ',
  VOILUTSequence: 'SQ',
  PatientSpeciesCodeSequence: 'SQ',
};
const LONG = new Set(['OW', 'OB', 'SQ', 'UT', 'UN']);

const ascii = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0));
export const words = (...numbers: number[]): Uint8Array => new Uint8Array(Uint16Array.from(numbers).buffer);

function bytesOf(value: Value): Uint8Array {
  if (typeof value === 'number') return words(value);
  if (value instanceof Uint8Array) return value;
  if (typeof value === 'string') return ascii(value.length % 2 === 0 ? value : `${value} `);
  const item = joined(value.map(([keyword, inner]) => element(keyword, inner)));
  return joined([Uint8Array.of(0xfe, 0xff, 0x00, 0xe0), new Uint8Array(Uint32Array.of(item.length).buffer), item]);
}

/** One element, Explicit VR Little Endian. */
export function element(
  keyword: Keyword,
  value: Value,
  vr = VRS[keyword] ?? (typeof value === 'number' ? 'US' : 'LO'),
): Uint8Array {
  const tag = TAGS[keyword];
  const group = Number.parseInt(tag.slice(1, 5), 16);
  const number = Number.parseInt(tag.slice(5), 16);
  const bytes = bytesOf(value);
  const length = LONG.has(vr) ? [words(0), new Uint8Array(Uint32Array.of(bytes.length).buffer)] : [words(bytes.length)];
  return joined([words(group, number), ascii(vr), ...length, bytes]);
}

/** A film of 2 rows and 3 columns, 12 of 16 bits. */
export const WHOLE = {
  SamplesPerPixel: 1,
  PhotometricInterpretation: 'MONOCHROME2',
  Rows: 2,
  Columns: 3,
  BitsAllocated: 16,
  BitsStored: 12,
  HighBit: 11,
  PixelRepresentation: 0,
  PixelData: words(0, 1, 2, 3, 4, 4095),
} as const satisfies Partial<Record<Keyword, Value>>;

/** The bytes of a part 10 file; an element given as undefined is left out. */
export function part10(
  changes: Partial<Record<Keyword, Value | undefined>> = {},
  syntax = '1.2.840.10008.1.2.1',
): Uint8Array {
  const merged: Partial<Record<Keyword, Value | undefined>> = { ...WHOLE, ...changes };
  const elements = (Object.keys(TAGS) as Keyword[]).flatMap((keyword) => {
    const value = merged[keyword];
    return value === undefined ? [] : [element(keyword, value)];
  });
  return joined([new Uint8Array(128), ascii('DICM'), element('TransferSyntaxUID', syntax, 'UI'), ...elements]);
}

/** Compressed pixel data in one fragment, with an empty table of frames; `end` false leaves the delimiter out. */
export function encapsulated(fragments: readonly Uint8Array[], end = true): Uint8Array {
  const item = (bytes: Uint8Array, number = 0xe000): Uint8Array =>
    joined([words(0xfffe, number), new Uint8Array(Uint32Array.of(bytes.length).buffer), bytes]);
  const head = joined([words(0x7fe0, 0x0010), ascii('OB'), words(0), Uint8Array.of(255, 255, 255, 255)]);
  return joined([
    head,
    item(new Uint8Array(0)),
    ...fragments.map((f) => item(f)),
    ...(end ? [item(new Uint8Array(0), 0xe0dd)] : []),
  ]);
}

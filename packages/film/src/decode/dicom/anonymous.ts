/** A DICOM film written anew without anything that names patient, owner, people, places or times; its pixels byte for byte. */
import { InputError } from '@bonewright/fault';
import { sha256 } from '@noble/hashes/sha2.js';
import type { Element } from 'dicom-parser';
import { deflateSync } from 'fflate';
import { joined, viewOf } from '../bytes.ts';
import { EXPORT_AGAIN } from '../limits.ts';
import { type DataSet, type Part10, pixelDataElement, readPart10 } from './elements.ts';
import { EMPTIED, KEPT, KEPT_SEQUENCES, RENUMBERED } from './kept-elements.ts';
import { endOfFragments, UNDEFINED_LENGTH } from './pixel-frames.ts';
import { type Keyword, placeOf, TAGS } from './tags.ts';
import { text } from './values.ts';

interface Encoding {
  readonly littleEndian: boolean;
  readonly isExplicit: boolean;
}

/** Four-byte lengths after two spare bytes (PS3.5 section 7.1.2). */
const LONG_VRS = new Set('OB OD OF OL OV OW SQ SV UC UN UR UT UV'.split(' '));
const META: Encoding = { littleEndian: true, isExplicit: true };
const PREAMBLE_BYTES = 128;

/** The film's file without names. Throws InputError where it is no film. */
export function anonymousDicom(bytes: Uint8Array): Uint8Array {
  const file = readPart10(bytes);
  const pixels = pixelDataElement(file);
  const encoding = { littleEndian: file.littleEndian, isExplicit: pixels.vr !== undefined };
  const uids = RENUMBERED.map((keyword) => [keyword, 'UI', newUid(text(file, keyword))] as const);
  const written: (readonly [Keyword, Uint8Array])[] = [
    ...KEPT.flatMap((keyword) => copied(file, keyword, encoding)),
    ...KEPT_SEQUENCES.flatMap(([keyword, inside]) => copiedSequence(file, keyword, inside, encoding)),
    ...EMPTIED.map(([keyword, vr]) => made(keyword, vr, '', encoding)),
    ...uids.map(([keyword, vr, uid]) => made(keyword, vr, uid, encoding)),
    made('PatientIdentityRemoved', 'CS', 'YES', encoding),
    made('DeidentificationMethod', 'LO', 'DICOM PS3.15 Basic Profile, kept by list', encoding),
  ];
  const inOrder = written.toSorted(([a], [b]) => (TAGS[a] < TAGS[b] ? -1 : 1)).map(([, element]) => element);
  const body = joined([...inOrder, pixelBytes(file, pixels, encoding)]);
  return joined([fileHead(file, uids[0]?.[2] ?? ''), file.syntax.deflated ? deflateSync(body) : body]);
}

/** Preamble and file meta information (PS3.10 section 7.1): no senders, no writers. */
function fileHead(file: Part10, instanceUid: string): Uint8Array {
  const ascii = (value: string) => Uint8Array.from(value, (c) => c.charCodeAt(0));
  const meta = (number: number, vr: string, value: Uint8Array) => elementOf([0x0002, number], vr, value, META);
  const rest = joined([
    meta(0x0001, 'OB', Uint8Array.of(0, 1)),
    meta(0x0002, 'UI', even(text(file, 'SOPClassUID'), 'UI')),
    meta(0x0003, 'UI', even(instanceUid, 'UI')),
    meta(0x0010, 'UI', even(file.syntax.uid, 'UI')),
    meta(0x0012, 'UI', even(newUid('bonewright'), 'UI')),
  ]);
  const length = new Uint8Array(4);
  viewOf(length).setUint32(0, rest.length, true);
  return joined([new Uint8Array(PREAMBLE_BYTES), ascii('DICM'), meta(0x0000, 'UL', length), rest]);
}

/** A UID made of a number of 128 bits (PS3.5 annex B.2), always the same one for the same old UID. */
function newUid(old: string): string {
  const bytes = sha256(Uint8Array.from(old, (c) => c.charCodeAt(0))).subarray(0, 16);
  return `2.25.${bytes.reduce((sum, byte) => sum * 256n + BigInt(byte), 0n)}`;
}

function copied(set: DataSet, keyword: Keyword, encoding: Encoding): (readonly [Keyword, Uint8Array])[] {
  const element = set.elements[TAGS[keyword]];
  if (!element || element.items || element.length === UNDEFINED_LENGTH) return [];
  const end = element.dataOffset + element.length;
  return [[keyword, set.bytes.subarray(startOf(element, encoding), end)]];
}

function copiedSequence(
  set: DataSet,
  keyword: Keyword,
  inside: readonly Keyword[],
  encoding: Encoding,
): (readonly [Keyword, Uint8Array])[] {
  const items = set.elements[TAGS[keyword]]?.items;
  if (!items) return [];
  const tag = (group: number, number: number, length: number) => {
    const bytes = new Uint8Array(8);
    const view = viewOf(bytes);
    view.setUint16(0, group, encoding.littleEndian);
    view.setUint16(2, number, encoding.littleEndian);
    view.setUint32(4, length, encoding.littleEndian);
    return bytes;
  };
  const content = items.flatMap(({ dataSet }) => {
    const elements = inside.flatMap((inner) =>
      dataSet ? copied({ ...set, elements: dataSet.elements }, inner, encoding).map(([, bytes]) => bytes) : [],
    );
    const item = joined(elements);
    return [tag(0xfffe, 0xe000, item.length), item];
  });
  return [[keyword, elementOf(numbersOf(keyword), 'SQ', joined(content), encoding)]];
}

const made = (keyword: Keyword, vr: string, value: string, encoding: Encoding): readonly [Keyword, Uint8Array] => [
  keyword,
  elementOf(numbersOf(keyword), vr, even(value, vr), encoding),
];

/** Tag, VR, length and value. */
function elementOf(
  [group, number]: readonly [number, number],
  vr: string,
  value: Uint8Array,
  { littleEndian, isExplicit }: Encoding,
): Uint8Array {
  const isLong = isExplicit && LONG_VRS.has(vr);
  const head = new Uint8Array(isLong ? 12 : 8);
  const view = viewOf(head);
  view.setUint16(0, group, littleEndian);
  view.setUint16(2, number, littleEndian);
  if (isExplicit) head.set([vr.charCodeAt(0), vr.charCodeAt(1)], 4);
  if (isLong) view.setUint32(8, value.length, littleEndian);
  else if (isExplicit) view.setUint16(6, value.length, littleEndian);
  else view.setUint32(4, value.length, littleEndian);
  return joined([head, value]);
}

/** Values have an even length; UIDs are filled up with a zero, texts with a space (PS3.5 section 6.2). */
function even(value: string, vr: string): Uint8Array {
  const filled = value.length % 2 === 0 ? value : `${value}${vr === 'UI' ? '\0' : ' '}`;
  return Uint8Array.from(filled, (c) => c.charCodeAt(0));
}

function numbersOf(keyword: Keyword): readonly [number, number] {
  const tag = TAGS[keyword];
  return [Number.parseInt(tag.slice(1, 5), 16), Number.parseInt(tag.slice(5), 16)];
}

const startOf = ({ vr, dataOffset }: Element, { isExplicit }: Encoding): number =>
  dataOffset - (isExplicit && vr !== undefined && LONG_VRS.has(vr) ? 12 : 8);

function pixelBytes(file: DataSet, element: Element, encoding: Encoding): Uint8Array {
  const end =
    element.length === UNDEFINED_LENGTH
      ? endOfFragments(file.bytes, element.dataOffset)
      : element.dataOffset + element.length;
  if (end > file.bytes.length)
    throw new InputError('the pixel data runs past the end of the file', placeOf('PixelData'), EXPORT_AGAIN);
  return file.bytes.subarray(startOf(element, encoding), end);
}

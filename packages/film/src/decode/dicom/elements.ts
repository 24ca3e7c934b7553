/**
 * The data elements of a DICOM part 10 file up to and including its pixel data, whose content is left unread.
 * Parsing is dicom-parser's; here are the bounds it lacks: every element inside the file, how many, and known VRs.
 */
import { InputError } from '@bonewright/fault';
import dicomParser, { type Element } from 'dicom-parser';
import { latin1, printable } from '../bytes.ts';
import { EXPORT_AGAIN, LARGEST_UNPACKED_BYTES, MOST_ELEMENTS, MOST_TOP_LEVEL_ELEMENTS } from '../limits.ts';
import { inflateBounded } from '../packed/inflate.ts';
import { placeOf, TAGS, tagNumbers } from './tags.ts';
import { type TransferSyntax, transferSyntax } from './transfer-syntax.ts';

/** Elements of one level, and the bytes their offsets point into. */
export interface DataSet {
  readonly bytes: Uint8Array;
  readonly littleEndian: boolean;
  readonly elements: Readonly<Record<string, Element>>;
}

export interface Part10 extends DataSet {
  readonly syntax: TransferSyntax;
  readonly warnings: readonly string[];
}

const PREAMBLE_BYTES = 128;
const META_START = PREAMBLE_BYTES + 'DICM'.length;
/** Tag, VR and length of the shortest element. */
const SHORTEST_ELEMENT = 8;
/** PS3.5 table 6.2-1. */
const VRS = new Set(
  'AE AS AT CS DA DS DT FD FL IS LO LT OB OD OF OL OV OW PN SH SL SQ SS ST SV TM UC UI UL UN UR US UT UV'.split(' '),
);
/** VRs with a four-byte length that dicom-parser does not know; their values are not read here. */
const LONG_VRS = new Set(['OV', 'SV', 'UV']);

export const isPart10 = (bytes: Uint8Array): boolean => latin1(bytes.subarray(PREAMBLE_BYTES, META_START)) === 'DICM';

/** Reads header and data set; @throws InputError naming the byte or element that is wrong. */
export function readPart10(bytes: Uint8Array): Part10 {
  const meta = readMeta(bytes);
  const uidElement = meta.elements[TAGS.TransferSyntaxUID];
  const uid = uidElement
    ? latin1(bytes.subarray(uidElement.dataOffset, uidElement.dataOffset + uidElement.length))
    : '';
  const syntax = transferSyntax(uid.replace(/[\0 ]+$/, ''));
  const body = syntax.deflated
    ? inflateBounded([bytes.subarray(meta.end)], 'raw', LARGEST_UNPACKED_BYTES, `byte ${meta.end}`)
    : bytes;
  const data = readDataSet(body, syntax.deflated ? 0 : meta.end, syntax);
  return { bytes: body, littleEndian: syntax.littleEndian, syntax, ...data };
}

function readMeta(bytes: Uint8Array): { elements: Record<string, Element>; end: number } {
  if (bytes.length <= META_START) throw endsEarly(bytes.length);
  const stream = new GuardedStream(dicomParser.littleEndianByteArrayParser, bytes, META_START);
  const elements: Record<string, Element> = {};
  while (stream.position + SHORTEST_ELEMENT <= bytes.length && bytes[stream.position] === 2) {
    if (bytes[stream.position + 1] !== 0) break;
    const element = parsed(stream, () => dicomParser.readDicomElementExplicit(stream));
    elements[element.tag] = element;
  }
  return { elements, end: stream.position };
}

function readDataSet(bytes: Uint8Array, start: number, syntax: TransferSyntax) {
  if (start >= bytes.length) throw endsEarly(start);
  const parser = syntax.littleEndian ? dicomParser.littleEndianByteArrayParser : dicomParser.bigEndianByteArrayParser;
  const stream = new GuardedStream(parser, bytes, start);
  const elements: Record<string, Element> = {};
  const warnings: string[] = [];
  const isExplicit = syntax.explicitVr && namesItsVr(bytes, start);
  if (isExplicit !== syntax.explicitVr) warnings.push('the header is written in another way than it says: implicit VR');
  let last = '';
  for (let count = 1; stream.position + SHORTEST_ELEMENT <= bytes.length; count++) {
    if (count > MOST_TOP_LEVEL_ELEMENTS) throw tooMany(MOST_TOP_LEVEL_ELEMENTS, stream.position);
    const at = stream.position;
    const element = parsed(stream, () =>
      isExplicit
        ? dicomParser.readDicomElementExplicit(stream, [], TAGS.PixelData)
        : dicomParser.readDicomElementImplicit(stream, TAGS.PixelData),
    );
    if (elements[element.tag])
      throw new InputError(`element ${tagNumbers(element.tag)} appears twice`, `byte ${at}`, EXPORT_AGAIN);
    if (element.tag < last && !warnings.some((w) => w.startsWith(OUT_OF_ORDER)))
      warnings.push(`${OUT_OF_ORDER} from ${tagNumbers(element.tag)} on: the header may be damaged`);
    elements[element.tag] = element;
    last = element.tag;
    if (element.tag === TAGS.PixelData) break;
  }
  return { elements, warnings };
}

const OUT_OF_ORDER = 'elements are out of order';

/** Some writers call a data set explicit and leave out what makes it so. */
const namesItsVr = (bytes: Uint8Array, start: number): boolean => VRS.has(latin1(bytes.subarray(start + 4, start + 6)));

/** Runs one step of the parser, which throws texts, objects and RangeErrors, and says where it stood. */
function parsed(stream: GuardedStream, step: () => Element): Element {
  const at = stream.position;
  try {
    return step();
  } catch (error) {
    if (error instanceof InputError) throw error;
    if (error instanceof RangeError) throw new InputError('sequences are nested too deep', `byte ${at}`, EXPORT_AGAIN);
    if (error instanceof TypeError || typeof error === 'string')
      throw new InputError('the header is damaged or cut short', `byte ${at}`, EXPORT_AGAIN);
    throw error;
  }
}

const endsEarly = (at: number): InputError =>
  new InputError('the file ends after its header', `byte ${at}`, EXPORT_AGAIN);

const tooMany = (limit: number, at: number): InputError =>
  new InputError(`the header holds more than ${limit} elements`, `byte ${at}`, EXPORT_AGAIN);

/** dicom-parser's stream, kept inside the file. It seeks once for each element, which is where they are counted. */
class GuardedStream extends dicomParser.ByteStream {
  #seeks = 0;

  override seek = (offset: number): void => {
    this.#seeks += 1;
    if (this.#seeks > MOST_ELEMENTS) throw tooMany(MOST_ELEMENTS, this.position);
    if (this.position + offset > this.byteArray.length)
      throw new InputError('an element runs past the end of the file', `byte ${this.position}`, EXPORT_AGAIN);
    this.position += offset;
  };

  /** Called for VRs only. */
  override readFixedString = (length: number): string => {
    const vr = dicomParser.readFixedString(this.byteArray, this.position, length);
    if (!VRS.has(vr) && !this.#isDelimiter())
      throw new InputError(`the kind of value "${printable(vr)}" is unknown`, `byte ${this.position}`, EXPORT_AGAIN);
    this.position += length;
    return LONG_VRS.has(vr) ? 'UN' : vr;
  };

  /** Item and sequence delimiters carry no VR. */
  #isDelimiter(): boolean {
    return this.byteArrayParser.readUint16(this.byteArray, this.position - 4) === 0xfffe;
  }
}

/** The pixel data element. @throws InputError in words fit for what the file holds instead. */
export function pixelDataElement(set: DataSet): Element {
  const element = set.elements[TAGS.PixelData];
  if (element) return element;
  if (TAGS.FloatPixelData in set.elements || TAGS.DoubleFloatPixelData in set.elements)
    throw new InputError(
      'the pixels are floating point numbers',
      placeOf('FloatPixelData'),
      'export the film with 8 or 16 bits',
    );
  throw new InputError(
    'the file holds no picture',
    placeOf('PixelData'),
    'give the film itself, not a report or a list of films',
  );
}

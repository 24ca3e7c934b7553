/** What the header says of the meaning and showing of grey values (PS3.3 C.11.1, C.11.2, C.8.11.3). */
import type { Film, LookupTable } from '../../model/film.ts';
import { viewOf } from '../bytes.ts';
import type { DataSet } from './elements.ts';
import type { ImageHeader } from './image-header.ts';
import { placeOf } from './tags.ts';
import { bytesOf, decimal, decimals, items, type Reader, text, texts } from './values.ts';

const MOST_ENTRIES = 65536;

/** Windows, tables and rescale; junk in any of them is set aside with a warning. */
export function readGrey(reader: Reader, header: ImageHeader): Film['grey'] {
  const { set, warnings } = reader;
  const modalityTable = items(set, 'ModalityLUTSequence').flatMap((item) =>
    readTable(item, header.signed, warnings),
  )[0];
  const slope = decimal(reader, 'RescaleSlope');
  const intercept = decimal(reader, 'RescaleIntercept');
  if (slope === 0) warnings.push(`${placeOf('RescaleSlope')} is 0: it was set aside`);
  if (modalityTable && slope !== undefined)
    warnings.push('the file has both a rescale and a modality table: the table counts');
  const padding = readPadding(set, header);
  const signedAfterwards = header.signed || (intercept ?? 0) < 0 || (slope ?? 1) < 0;
  const voiTables = items(set, 'VOILUTSequence').flatMap((item) =>
    readTable(item, signedAfterwards && !modalityTable, warnings),
  );
  return {
    slope: slope || 1,
    intercept: (slope !== 0 && intercept) || 0,
    windows: readWindows(reader),
    voiFunction: readVoiFunction(set),
    intensitySign: readSign(set),
    intensityRelationship: readRelationship(set),
    ...(modalityTable ? { modalityTable } : {}),
    ...(voiTables.length > 0 ? { voiTables } : {}),
    ...(text(set, 'PresentationLUTShape') === 'INVERSE' ? { presentationInverse: true } : {}),
    ...(padding === undefined ? {} : { padding }),
  };
}

function readWindows(reader: Reader): Film['grey']['windows'] {
  const centres = decimals(reader, 'WindowCenter');
  const widths = decimals(reader, 'WindowWidth');
  const names = texts(reader.set, 'WindowCenterWidthExplanation');
  const leastWidth = readVoiFunction(reader.set) === 'LINEAR' ? 1 : Number.MIN_VALUE;
  if (centres.length !== widths.length) reader.warnings.push('window centres and widths do not pair up');
  return centres.flatMap((centre, i) => {
    const width = widths[i];
    if (width === undefined || width < leastWidth) return [];
    return [{ centre, width, name: names[i] || `window ${i + 1} of the file` }];
  });
}

function readVoiFunction(set: DataSet): Film['grey']['voiFunction'] {
  const said = text(set, 'VOILUTFunction');
  return said === 'LINEAR_EXACT' || said === 'SIGMOID' ? said : 'LINEAR';
}

function readSign(set: DataSet): 1 | -1 | null {
  const bytes = bytesOf(set, 'PixelIntensityRelationshipSign');
  const sign = bytes?.length === 2 ? viewOf(bytes).getInt16(0, set.littleEndian) : 0;
  return sign === 1 || sign === -1 ? sign : null;
}

function readRelationship(set: DataSet): 'LIN' | 'LOG' | null {
  const said = text(set, 'PixelIntensityRelationship');
  return said === 'LIN' || said === 'LOG' ? said : null;
}

function readPadding(set: DataSet, { signed }: ImageHeader): number | undefined {
  const bytes = bytesOf(set, 'PixelPaddingValue');
  if (bytes?.length !== 2) return undefined;
  return signed ? viewOf(bytes).getInt16(0, set.littleEndian) : viewOf(bytes).getUint16(0, set.littleEndian);
}

/** One table of a sequence item (PS3.3 C.11.1.1.1); none and a warning where its parts do not fit together. */
function readTable(item: DataSet, signedInput: boolean, warnings: string[]): LookupTable[] {
  const descriptor = bytesOf(item, 'LUTDescriptor');
  const data = bytesOf(item, 'LUTData');
  const asides = () => {
    warnings.push(`${placeOf('LUTDescriptor')} and its data do not fit together: the table was set aside`);
    return [];
  };
  if (descriptor?.length !== 6 || !data) return asides();
  const view = viewOf(descriptor);
  const entries = view.getUint16(0, item.littleEndian) || MOST_ENTRIES;
  const first = signedInput ? view.getInt16(2, item.littleEndian) : view.getUint16(2, item.littleEndian);
  const bits = view.getUint16(4, item.littleEndian);
  const bytesEach = data.length >= 2 * entries ? 2 : 1;
  if (bits < 8 || bits > 16 || data.length < entries * bytesEach || (bytesEach === 1 && bits > 8)) return asides();
  const from = viewOf(data);
  const values = Uint16Array.from({ length: entries }, (_, i) =>
    bytesEach === 2 ? from.getUint16(2 * i, item.littleEndian) : from.getUint8(i),
  );
  return [{ first, bits, values, name: text(item, 'LUTExplanation') || 'table of the file' }];
}

/** A DICOM part 10 file as a film. The order of the checks matters: nothing large is done before it is known to be sane. */
import type { Film } from '../../model/film.ts';
import { pixelDataElement, readPart10 } from './elements.ts';
import { readGrey } from './grey-values.ts';
import { readFacts, warnOfFacts } from './header-facts.ts';
import { readImageHeader } from './image-header.ts';
import { readPixels } from './pixels.ts';
import { readSpacing } from './spacing.ts';

/** @throws InputError naming the attribute or byte at fault. */
export async function decodeDicom(bytes: Uint8Array): Promise<Omit<Film, 'min' | 'max'>> {
  const file = readPart10(bytes);
  pixelDataElement(file);
  const shape = readImageHeader(file);
  const warnings = [...file.warnings];
  const reader = { set: file, warnings };
  const pixels = await readPixels(file, shape, warnings);
  const spacing = readSpacing(reader);
  const grey = readGrey(reader, shape);
  warnOfFacts(reader, file.syntax.lossy);
  return {
    format: 'dicom',
    rows: shape.rows,
    cols: shape.cols,
    frames: shape.frames,
    samplesPerPixel: shape.samples,
    bitsAllocated: shape.bitsAllocated,
    bitsStored: shape.bitsStored,
    pixelRepresentation: shape.signed ? 1 : 0,
    photometric: shape.photometric,
    transferSyntax: file.syntax.uid,
    spacing,
    pixels,
    grey,
    header: readFacts(file),
    warnings: [...new Set(warnings)],
  };
}

/**
 * The millimetres a header claims for a pixel, and the plane they hold in (PS3.3 section 10.7.1).
 * Nothing here is scale at the bone: that needs a height, or a ball, and is the user's to give.
 */
import type { Spacing } from '../../model/film.ts';
import { type Keyword, placeOf } from './tags.ts';
import { decimals, type Reader, text } from './values.ts';

/** Sections through the patient: their pixel spacing is in the patient by definition (PS3.3 C.7.6.2). */
const CROSS_SECTIONS = new Set(['CT', 'MR', 'PT']);
/** Two spacings written by the same hand are the same number; text forms round at the sixth digit or so. */
const SAME_RATIO = 1e-4;

type Pair = readonly [rowMm: number, colMm: number];

/** Null where the header gives no spacing that can be used. */
export function readSpacing(reader: Reader): Spacing | null {
  const imager = readPair(reader, 'ImagerPixelSpacing');
  const scanned = readPair(reader, 'NominalScannedPixelSpacing');
  const own = readPair(reader, 'PixelSpacing');
  const detector = imager ?? scanned;
  const detectorBasis = imager
    ? placeOf('ImagerPixelSpacing')
    : `${placeOf('NominalScannedPixelSpacing')}, the scanned film`;
  const calibration = text(reader.set, 'PixelSpacingCalibrationType').toUpperCase();
  if (own && detector && isSame(own, detector) && !calibration)
    return spacing(detector, 'detector', `${detectorBasis}; ${placeOf('PixelSpacing')} repeats it`);
  if (own && (calibration === 'GEOMETRY' || calibration === 'FIDUCIAL'))
    return spacing(own, 'patient', `${placeOf('PixelSpacing')}, ${calibrationWords(calibration, reader)}`);
  if (own && detector)
    return spacing(
      own,
      'patient',
      `${placeOf('PixelSpacing')}, which differs from ${detectorBasis}: calibrated in a way the file does not say`,
    );
  if (own && CROSS_SECTIONS.has(text(reader.set, 'Modality')))
    return spacing(own, 'patient', `${placeOf('PixelSpacing')} of a section through the patient`);
  if (own) return spacing(own, 'unknown', `${placeOf('PixelSpacing')}, the file does not say in which plane`);
  return detector ? spacing(detector, 'detector', detectorBasis) : null;
}

const spacing = ([rowMm, colMm]: Pair, plane: Spacing['plane'], basis: string): Spacing => ({
  rowMm,
  colMm,
  plane,
  basis,
});

const isSame = (a: Pair, b: Pair): boolean => a.every((mm, i) => Math.abs(mm / b[i]! - 1) < SAME_RATIO);

function calibrationWords(kind: 'GEOMETRY' | 'FIDUCIAL', { set }: Reader): string {
  const said = text(set, 'PixelSpacingCalibrationDescription');
  const meaning =
    kind === 'GEOMETRY'
      ? 'calibrated by an assumed or known magnification, at a depth the file does not say'
      : 'calibrated by an object of known size, right at its depth only';
  return said ? `${meaning} ("${said}")` : meaning;
}

function readPair(reader: Reader, keyword: Keyword): Pair | undefined {
  const [rowMm, colMm, ...rest] = decimals(reader, keyword);
  if (rowMm === undefined) return undefined;
  if (colMm !== undefined && rowMm > 0 && colMm > 0 && rest.length === 0) return [rowMm, colMm];
  reader.warnings.push(`${placeOf(keyword)} is not two lengths above 0: it was set aside`);
  return undefined;
}

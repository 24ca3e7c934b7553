/** What an X-ray machine may send: pictures made with X-rays, in every way that can be read here. */
import dimse from 'dcmjs-dimse';

const { StorageClass, SopClass } = dimse.constants;
const SYNTAX = '1.2.840.10008.1.2';

const PICTURES: ReadonlySet<string> = new Set([
  StorageClass.ComputedRadiographyImageStorage,
  StorageClass.DigitalXRayImageStorageForPresentation,
  StorageClass.DigitalXRayImageStorageForProcessing,
  StorageClass.DigitalIntraOralXRayImageStorageForPresentation,
  StorageClass.DigitalIntraOralXRayImageStorageForProcessing,
  StorageClass.DigitalMammographyXRayImageStorageForPresentation,
  StorageClass.DigitalMammographyXRayImageStorageForProcessing,
  StorageClass.XRayAngiographicImageStorage,
  StorageClass.XRayRadiofluoroscopicImageStorage,
  StorageClass.SecondaryCaptureImageStorage,
  StorageClass.MultiframeGrayscaleByteSecondaryCaptureImageStorage,
  StorageClass.MultiframeGrayscaleWordSecondaryCaptureImageStorage,
  StorageClass.MultiframeTrueColorSecondaryCaptureImageStorage,
]);

/** Transfer syntaxes (PS3.6 table A-1) by preference: plain, then compressed without loss, then with loss. */
const PREFERRED: readonly string[] = [
  `${SYNTAX}.1`,
  SYNTAX,
  ...['1.99', '2', '5', '4.70', '4.57', '4.80', '4.90', '4.201', '4.202'].map((tail) => `${SYNTAX}.${tail}`),
  ...['4.81', '4.91', '4.203', '4.51', '4.50'].map((tail) => `${SYNTAX}.${tail}`),
];

/** Pictures, and the question whether anybody is there. */
export const isAccepted = (sopClass: string): boolean => sopClass === SopClass.Verification || PICTURES.has(sopClass);

/** The best of the ways a machine proposes to write a film; null where none can be read. */
export const bestSyntax = (proposed: readonly string[]): string | null =>
  PREFERRED.find((uid) => proposed.includes(uid)) ?? null;

/**
 * What of a DICOM header stays in a copy that leaves the practice: what the picture needs to be read and measured, and
 * nothing that somebody typed. Whatever stands in DICOM PS3.15 table E.1-1 (Basic Application Level Confidentiality
 * Profile), every private element and everything not named here is left out.
 */
import type { Keyword } from './tags.ts';

/** Copied word for word. */
export const KEPT: readonly Keyword[] = [
  'SpecificCharacterSet',
  'SOPClassUID',
  'Modality',
  'AnatomicalOrientationType',
  'BodyPartExamined',
  'KVP',
  'DistanceSourceToDetector',
  'DistanceSourceToPatient',
  'EstimatedRadiographicMagnificationFactor',
  'ExposureTime',
  'ImagerPixelSpacing',
  'NominalScannedPixelSpacing',
  'ViewPosition',
  'PatientOrientation',
  'Laterality',
  'ImageLaterality',
  'SamplesPerPixel',
  'PhotometricInterpretation',
  'PlanarConfiguration',
  'NumberOfFrames',
  'Rows',
  'Columns',
  'PixelSpacing',
  'BitsAllocated',
  'BitsStored',
  'HighBit',
  'PixelRepresentation',
  'PixelPaddingValue',
  'BurnedInAnnotation',
  'PixelSpacingCalibrationType',
  'PixelIntensityRelationship',
  'PixelIntensityRelationshipSign',
  'WindowCenter',
  'WindowWidth',
  'RescaleIntercept',
  'RescaleSlope',
  'RescaleType',
  'VOILUTFunction',
  'LossyImageCompression',
  'PresentationLUTShape',
];

/** Sequences that are kept, and what is kept of their items. */
export const KEPT_SEQUENCES: readonly (readonly [Keyword, readonly Keyword[]])[] = [
  ['ModalityLUTSequence', ['LUTDescriptor', 'LUTData']],
  ['VOILUTSequence', ['LUTDescriptor', 'LUTData']],
  ['ViewCodeSequence', ['CodeValue', 'CodingSchemeDesignator', 'CodeMeaning']],
];

/** Present but empty, as the profile asks of what a film must not lack (action Z). */
export const EMPTIED: readonly (readonly [keyword: Keyword, vr: string])[] = [
  ['StudyDate', 'DA'],
  ['StudyTime', 'TM'],
  ['AccessionNumber', 'SH'],
  ['ReferringPhysicianName', 'PN'],
  ['PatientName', 'PN'],
  ['PatientID', 'LO'],
  ['PatientBirthDate', 'DA'],
  ['PatientSex', 'CS'],
  ['StudyID', 'SH'],
];

/** Given anew, the same for the same old one (action U). */
export const RENUMBERED: readonly Keyword[] = ['SOPInstanceUID', 'StudyInstanceUID', 'SeriesInstanceUID'];

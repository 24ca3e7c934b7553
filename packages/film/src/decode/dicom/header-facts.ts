/** What the header says of patient, view and time, for the user to confirm (PS3.3 C.7.1.1, C.8.11). */
import type { DataSet } from './elements.ts';
import { type Keyword, placeOf, TAGS } from './tags.ts';
import { items, type Reader, text } from './values.ts';

/** Key in `Film.header` and the attribute it comes from. */
const FACTS = {
  modality: 'Modality',
  manufacturer: 'Manufacturer',
  institution: 'InstitutionName',
  studyDescription: 'StudyDescription',
  seriesDescription: 'SeriesDescription',
  studyDate: 'StudyDate',
  studyTime: 'StudyTime',
  acquisitionDate: 'AcquisitionDate',
  acquisitionTime: 'AcquisitionTime',
  acquisitionDateTime: 'AcquisitionDateTime',
  contentDate: 'ContentDate',
  contentTime: 'ContentTime',
  patientName: 'PatientName',
  patientId: 'PatientID',
  patientBirthDate: 'PatientBirthDate',
  patientAge: 'PatientAge',
  patientSex: 'PatientSex',
  patientSexNeutered: 'PatientSexNeutered',
  patientWeightKg: 'PatientWeight',
  patientAddress: 'PatientAddress',
  patientTelephone: 'PatientTelephoneNumbers',
  patientComments: 'PatientComments',
  species: 'PatientSpeciesDescription',
  breed: 'PatientBreedDescription',
  responsiblePerson: 'ResponsiblePerson',
  responsiblePersonRole: 'ResponsiblePersonRole',
  responsibleOrganization: 'ResponsibleOrganization',
  referringPhysician: 'ReferringPhysicianName',
  operators: 'OperatorsName',
  bodyPart: 'BodyPartExamined',
  viewPosition: 'ViewPosition',
  laterality: 'Laterality',
  imageLaterality: 'ImageLaterality',
  patientOrientation: 'PatientOrientation',
  anatomicalOrientation: 'AnatomicalOrientationType',
  tubeVoltageKv: 'KVP',
  exposureTimeMs: 'ExposureTime',
  sourceToDetectorMm: 'DistanceSourceToDetector',
  sourceToSupportMm: 'DistanceSourceToPatient',
  magnificationAtSupport: 'EstimatedRadiographicMagnificationFactor',
  burnedInAnnotation: 'BurnedInAnnotation',
  lossyImageCompression: 'LossyImageCompression',
} as const satisfies Record<string, Keyword>;

/** Facts given as a coded term: the meaning of its first item. */
const CODED = {
  species: 'PatientSpeciesCodeSequence',
  breed: 'PatientBreedCodeSequence',
  view: 'ViewCodeSequence',
} as const satisfies Record<string, Keyword>;

/** Non-empty facts only; free text wins over a coded term for the same fact. */
export function readFacts(set: DataSet): Record<string, string> {
  const coded = Object.entries(CODED).map(([key, keyword]) => [key, meaning(set, keyword)]);
  const plain = Object.entries(FACTS).map(([key, keyword]) => [key, text(set, keyword)]);
  return Object.fromEntries([...coded, ...plain].filter(([, value]) => value));
}

const meaning = (set: DataSet, keyword: Keyword): string => {
  const [item] = items(set, keyword);
  return item ? text(item, 'CodeMeaning') : '';
};

/** What the user must be told before measuring or passing the film on. */
export function warnOfFacts({ set, warnings }: Reader, lossySyntax: boolean): void {
  if (lossySyntax || text(set, 'LossyImageCompression') === '01')
    warnings.push('the film was compressed with loss: fine detail may be changed');
  if (text(set, 'BurnedInAnnotation') === 'YES')
    warnings.push('names may be burnt into the picture itself, where no export can take them out');
  const sides = new Set([text(set, 'Laterality'), text(set, 'ImageLaterality')].filter(Boolean));
  if (sides.size > 1)
    warnings.push(`${placeOf('Laterality')} and ${placeOf('ImageLaterality')} disagree: go by the marker on the film`);
  const isAnimal = [TAGS.PatientSpeciesDescription, TAGS.PatientSpeciesCodeSequence].some((tag) => tag in set.elements);
  if (isAnimal && text(set, 'AnatomicalOrientationType') !== 'QUADRUPED' && text(set, 'PatientOrientation'))
    warnings.push('the patient is an animal, the directions in the header are those of a biped: confirm the view');
}

/** The admission form: what is asked in which words, and the entry that follows from what was touched. */
import type { Admission } from '@bonewright/casebook';
import type { FieldSpec, Outcome, Values } from '../form/entry-form.tsx';
import { readNumber } from '../form/read-number.ts';
import { fromField, toField } from '../words/time.ts';

export type AdmissionKey =
  | 'placeWords'
  | 'mapReference'
  | 'latitude'
  | 'longitude'
  | 'foundAt'
  | 'cause'
  | 'wound'
  | 'boneShows'
  | 'feels'
  | 'bloodReaches'
  | 'otherInjuries'
  | 'givenBefore'
  | 'inMilk'
  | 'scale'
  | 'finderName'
  | 'finderContact'
  | 'rescueName'
  | 'rescueContact'
  | 'decides'
  | 'consent';
export type AdmissionValues = Values<AdmissionKey>;

const SEEN = [
  ['yes', 'yes'],
  ['no', 'no'],
  ['not looked', 'not looked'],
] as const;
const CAUSES = ['car', 'cat', 'dog', 'fell', 'strimmer or mower', 'netting or wire', 'trap', 'not known'];

export const ADMISSION_FIELDS: readonly FieldSpec<AdmissionKey>[] = [
  {
    kind: 'text',
    key: 'placeWords',
    label: 'Where it was found',
    isWide: true,
    help: 'So that somebody else finds the spot: it goes back there.',
  },
  { kind: 'text', key: 'mapReference', label: 'Grid reference or postcode' },
  { kind: 'time', key: 'foundAt', label: 'Found at' },
  { kind: 'number', key: 'latitude', label: 'Latitude', unit: '° N', help: 'South is negative.' },
  { kind: 'number', key: 'longitude', label: 'Longitude', unit: '° E', help: 'West is negative.' },
  { kind: 'text', key: 'cause', label: 'What happened, as told', options: CAUSES, isWide: true },
  {
    kind: 'choice',
    key: 'wound',
    label: 'Skin over the break',
    options: [
      ['closed', 'closed'],
      ['open', 'open'],
      ['not looked', 'not looked'],
    ],
  },
  {
    kind: 'choice',
    key: 'boneShows',
    label: 'Bone to be seen',
    options: [
      ['no', 'no'],
      ['moist', 'moist'],
      ['dried out', 'dried out'],
      ['not looked', 'not looked'],
    ],
    help: 'If it shows, keep it moist.',
  },
  { kind: 'choice', key: 'feels', label: 'Feels a pinch below the break', options: SEEN },
  { kind: 'choice', key: 'bloodReaches', label: 'Warm and pink below the break', options: SEEN },
  { kind: 'area', key: 'otherInjuries', label: 'Other injuries' },
  { kind: 'area', key: 'givenBefore', label: 'Given before it came, with times' },
  { kind: 'choice', key: 'inMilk', label: 'In milk, or young that wait for it', options: SEEN },
  { kind: 'text', key: 'scale', label: 'Which scale weighed it' },
  { kind: 'text', key: 'finderName', label: 'Finder' },
  { kind: 'text', key: 'finderContact', label: 'How the finder is reached' },
  { kind: 'text', key: 'rescueName', label: 'Rescue' },
  { kind: 'text', key: 'rescueContact', label: 'How the rescue is reached' },
  {
    kind: 'text',
    key: 'decides',
    label: 'Who decides on treatment, and on putting it to sleep',
    isWide: true,
    help: 'A wild animal has no owner: the vet and the rescue agree on a name.',
  },
  {
    kind: 'choice',
    key: 'consent',
    label: 'Agreed to by whoever decides',
    isWide: true,
    options: [
      ['given', 'given'],
      ['asked', 'asked'],
      ['not needed', 'not needed'],
      ['not asked', 'not asked'],
    ],
  },
];

const degrees = (value: number | null | undefined): string => (value == null ? '' : String(value));

/** What was said so far, as the form shows it. */
export function admissionValues(noted: Partial<Admission>): AdmissionValues {
  const { finder, rescue, place, foundAt } = noted;
  return {
    placeWords: place?.words ?? '',
    mapReference: place?.mapReference ?? '',
    latitude: degrees(place?.latitudeDeg),
    longitude: degrees(place?.longitudeDeg),
    foundAt: foundAt ? toField(new Date(foundAt)) : '',
    cause: noted.cause ?? '',
    wound: noted.wound ?? '',
    boneShows: noted.boneShows ?? '',
    feels: noted.feels ?? '',
    bloodReaches: noted.bloodReaches ?? '',
    otherInjuries: noted.otherInjuries ?? '',
    givenBefore: noted.givenBefore ?? '',
    inMilk: noted.inMilk ?? '',
    scale: noted.scale ?? '',
    finderName: finder?.name ?? '',
    finderContact: finder?.contact ?? '',
    rescueName: rescue?.name ?? '',
    rescueContact: rescue?.contact ?? '',
    decides: noted.decides ?? '',
    consent: noted.consent ?? '',
  };
}

type Draft = { -readonly [K in keyof Admission]?: Admission[K] };

/** The entry: only what is new against what was said. */
export function admissionOutcome(values: AdmissionValues, before: AdmissionValues): Outcome<AdmissionKey> {
  const faults = faultsOf(values);
  if (Object.keys(faults).length > 0) return { faults };
  const isNew = (...keys: readonly AdmissionKey[]): boolean => keys.some((key) => values[key] !== before[key]);
  const said: Draft = {};
  if (isNew('placeWords', 'mapReference', 'latitude', 'longitude'))
    said.place = {
      words: values.placeWords.trim(),
      mapReference: values.mapReference.trim(),
      latitudeDeg: readNumber(values.latitude),
      longitudeDeg: readNumber(values.longitude),
    };
  if (isNew('foundAt')) said.foundAt = fromField(values.foundAt);
  if (isNew('finderName', 'finderContact'))
    said.finder = { name: values.finderName.trim(), contact: values.finderContact.trim() };
  if (isNew('rescueName', 'rescueContact'))
    said.rescue = { name: values.rescueName.trim(), contact: values.rescueContact.trim() };
  for (const key of ['cause', 'scale', 'otherInjuries', 'givenBefore', 'decides'] as const)
    if (isNew(key)) said[key] = values[key].trim();
  const choices = { ...said, ...choicesOf(values, isNew) };
  if (Object.keys(choices).length === 0) return { faults: { placeWords: 'Nothing is new yet: say one thing.' } };
  return { entries: [{ kind: 'admission-noted', payload: choices }] };
}

function choicesOf(values: AdmissionValues, isNew: (key: AdmissionKey) => boolean): Draft {
  const said: Draft = {};
  const { wound, boneShows, feels, bloodReaches, inMilk, consent } = values;
  if (isNew('wound') && isOneOf(['closed', 'open', 'not looked'], wound)) said.wound = wound;
  if (isNew('boneShows') && isOneOf(['no', 'moist', 'dried out', 'not looked'], boneShows)) said.boneShows = boneShows;
  if (isNew('feels') && isOneOf(['yes', 'no', 'not looked'], feels)) said.feels = feels;
  if (isNew('bloodReaches') && isOneOf(['yes', 'no', 'not looked'], bloodReaches)) said.bloodReaches = bloodReaches;
  if (isNew('inMilk') && isOneOf(['yes', 'no', 'not looked'], inMilk)) said.inMilk = inMilk;
  if (isNew('consent') && isOneOf(['given', 'asked', 'not needed', 'not asked'], consent)) said.consent = consent;
  return said;
}

function isOneOf<T extends string>(words: readonly T[], word: string): word is T {
  return words.some((one) => one === word);
}

type MutableFaults = Partial<Record<AdmissionKey, string>>;

function faultsOf(values: AdmissionValues): MutableFaults {
  const faults: MutableFaults = {};
  const { placeWords, mapReference, latitude, longitude, foundAt } = values;
  const hasPlace = [mapReference, latitude, longitude].some((text) => text.trim() !== '');
  if (hasPlace && placeWords.trim() === '')
    faults.placeWords = 'Say it in words as well, like "verge of Mill Lane by the bridge".';
  if (latitude.trim() !== '' && !isWithin(latitude, 90)) faults.latitude = 'Degrees from -90 to 90, like 52.31.';
  if (longitude.trim() !== '' && !isWithin(longitude, 180)) faults.longitude = 'Degrees from -180 to 180, like -1.87.';
  if ((latitude.trim() === '') !== (longitude.trim() === ''))
    faults[latitude.trim() === '' ? 'latitude' : 'longitude'] = 'A place has both degrees, or neither.';
  if (foundAt !== '' && fromField(foundAt) === null) faults.foundAt = 'This is not a date and time.';
  return faults;
}

function isWithin(text: string, most: number): boolean {
  const value = readNumber(text);
  return value !== null && Math.abs(value) <= most;
}

/** Which facts of a header are personal data: shown to the user, left out of whatever leaves the practice unless asked for. */
import type { Film } from '../model/film.ts';

/** The patient's name may hold the owner's family name (PS3.3 C.7.1.1), so it counts as personal. */
export const PERSONAL_FACTS: readonly string[] = [
  'patientName',
  'patientId',
  'patientBirthDate',
  'patientAddress',
  'patientTelephone',
  'patientComments',
  'responsiblePerson',
  'responsiblePersonRole',
  'responsibleOrganization',
  'referringPhysician',
  'operators',
  'institution',
];

/** The header without personal data. */
export const publicHeader = (header: Film['header']): Film['header'] =>
  Object.fromEntries(Object.entries(header).filter(([key]) => !PERSONAL_FACTS.includes(key)));

/** The names of the personal facts a header holds. */
export const personalFacts = (header: Film['header']): string[] =>
  Object.keys(header).filter((key) => PERSONAL_FACTS.includes(key));

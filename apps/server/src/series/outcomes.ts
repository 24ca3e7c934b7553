/** What became of every case as a table (RFC 4180), for a series of one's own. No person is named in it. */
import { type CaseState, operatedAt } from '@bonewright/casebook';
import { csvOf } from './csv.ts';

const DAY_MS = 86_400_000;

const COLUMNS = {
  case: ({ patient }: CaseState) => patient?.value.number,
  demonstration: ({ patient }: CaseState) => (patient?.value.demonstration ? 'yes' : 'no'),
  species: ({ patient }: CaseState) => patient?.value.species,
  'age class': ({ patient }: CaseState) => patient?.value.ageClass,
  sex: ({ patient }: CaseState) => patient?.value.sex,
  bone: ({ patient }: CaseState) => patient?.value.bone,
  side: ({ patient }: CaseState) => patient?.value.side,
  'mass, g': ({ patient }: CaseState) => patient?.value.massG,
  'case opened': ({ openedAt }: CaseState) => dayOf(openedAt),
  wound: ({ admission }: CaseState) => admission.noted?.value.wound,
  decided: ({ admission }: CaseState) => admission.decisions.at(-1)?.value.course,
  operated: (state: CaseState) => dayOf(operatedAt(state)),
  'pins placed': ({ theatre }: CaseState) => theatre.pins.filter(({ placed }) => placed !== null).length,
  'frame off': ({ course }: CaseState) => dayOf(course.frameTaken?.value.at),
  'all implants out': ({ course }: CaseState) => yesOrNo(course.frameTaken?.value.isAllOut),
  'united by hand': ({ course }: CaseState) => yesOrNo(course.union.hand?.value.isUnited),
  'united by film': ({ course }: CaseState) => yesOrNo(course.union.film?.value.isUnited),
  'days with the frame': (state: CaseState) => daysBetween(operatedAt(state), state.course.frameTaken?.value.at),
  released: ({ course }: CaseState) => dayOf(course.released?.value.at),
  'released where found': ({ course }: CaseState) => yesOrNo(course.released?.value.isWhereFound),
  sightings: ({ course }: CaseState) => course.sightings.length,
  'outcome of the bone': ({ course }: CaseState) => course.bone?.value.bone,
  'outcome of the patient': ({ course }: CaseState) => course.patient?.value.patient,
} as const;

/** A head and a line for each case; what was never said is empty. */
export function outcomesOf(states: readonly CaseState[]): string {
  const lines = [Object.keys(COLUMNS), ...states.map((state) => Object.values(COLUMNS).map((of) => of(state) ?? ''))];
  return csvOf(lines);
}

const dayOf = (moment: string | null | undefined): string | undefined => moment?.slice(0, 10);
const yesOrNo = (said: boolean | undefined): string | undefined =>
  said === undefined ? undefined : said ? 'yes' : 'no';

function daysBetween(from: string | null, to: string | undefined): number | undefined {
  return from === null || to === undefined ? undefined : Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);
}

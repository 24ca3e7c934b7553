/** Law as questions with an address: never a verdict, never complete. Whoever is responsible looks it up where the patient is. */
import type { Source, Status } from './entry.ts';

export interface LawQuestion {
  readonly id: string;
  /** Species it is about; empty for all. */
  readonly species: readonly string[];
  readonly group: 'birds' | 'mammals' | 'any';
  /** Where it comes from; elsewhere ask the like. */
  readonly country: string;
  readonly question: string;
  /** Who can answer. */
  readonly ask: string;
  readonly source: Source;
  readonly status: Status;
}

const COUNCIL = { title: 'British Wildlife Rehabilitation Council, guidelines and appendices' };
const FORMULARY = { title: 'British small-animal formulary, wildlife tables' };

export const lawQuestions: readonly LawQuestion[] = Object.freeze<LawQuestion[]>([
  {
    id: 'law.gb.disabled-bird',
    species: [],
    group: 'birds',
    country: 'Great Britain',
    question: 'Was this wild bird taken only to tend and release it, and is that written down?',
    ask: 'the statutory nature conservation body; Wildlife and Countryside Act 1981, section 4(2)',
    source: COUNCIL,
    status: 'seen',
  },
  {
    id: 'law.uk.grey-squirrel',
    species: ['grey squirrel'],
    group: 'mammals',
    country: 'United Kingdom',
    question:
      'Grey squirrels may not be released anywhere in the UK and need a licence to be kept. Which licence covers this one?',
    ask: 'the statutory nature conservation body',
    source: FORMULARY,
    status: 'seen',
  },
  {
    id: 'law.gb.licence',
    species: [],
    group: 'any',
    country: 'Great Britain',
    question: 'Does keeping or releasing this species need a licence, or registration within some days?',
    ask: 'the statutory nature conservation body (Schedules 4 and 9; European protected species)',
    source: COUNCIL,
    status: 'seen',
  },
  {
    id: 'law.gb.lay',
    species: [],
    group: 'any',
    country: 'Great Britain',
    question: 'Who does what? People who are not veterinary surgeons may give first aid only.',
    ask: 'the regulator of veterinary surgeons; Veterinary Surgeons Act 1966',
    source: COUNCIL,
    status: 'seen',
  },
  {
    id: 'law.gb.welfare',
    species: [],
    group: 'any',
    country: 'Great Britain',
    question: 'While it is in human hands, who is responsible for its welfare, each day?',
    ask: 'the rescue and the practice between them; Animal Welfare Act 2006',
    source: { title: 'good practice guidelines for wildlife centres, contents', year: 2016 },
    status: 'seen',
  },
  {
    id: 'law.gb.food-animal',
    species: ['rabbit', 'wood pigeon'],
    group: 'any',
    country: 'Great Britain',
    question: 'Could anybody eat it after release? Then withdrawal periods and forbidden medicines apply.',
    ask: 'the medicines regulator',
    source: { title: 'withdrawal-period guide for Great Britain and Northern Ireland' },
    status: 'seen',
  },
  {
    id: 'law.us.migratory-bird',
    species: [],
    group: 'birds',
    country: 'United States',
    question: 'Is there a permit, or a transfer within a day to somebody who has one?',
    ask: 'the federal wildlife service (migratory birds, rule of 2003)',
    source: { title: 'US Fish and Wildlife Service, Federal Register 68:61123', year: 2003 },
    status: 'seen',
  },
  {
    id: 'law.elsewhere',
    species: [],
    group: 'any',
    country: 'elsewhere',
    question: 'Which licence or code of practice covers care and release of wild animals here?',
    ask: 'the wildlife authority of the country or state',
    source: { title: 'codes of Queensland (2013) and advice of Ireland, as two examples' },
    status: 'seen',
  },
]);

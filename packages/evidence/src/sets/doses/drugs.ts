/** Drugs by their generic names: strengths they are sold in, cautions, and schedules by country. Always read the vial. */
import type { Caution, Drug, Schedule, Strength } from '../../dose-figure.ts';
import type { Source } from '../../entry.ts';
import { BIRD_FRACTURES, EMERGENCY_TABLE, RABBIT_ANTIBIOTICS, RECALLED } from './sources.ts';

const recalled = (perMl: number, note?: string): Strength =>
  note === undefined ? { perMl, status: 'memory' } : { perMl, status: 'memory', note };
const seen = (perMl: number, note?: string): Strength =>
  note === undefined ? { perMl, status: 'seen' } : { perMl, status: 'seen', note };

const RCVS: Source = {
  title: 'Royal College of Veterinary Surgeons and Veterinary Medicines Directorate, controlled drugs',
};
const VMD: Source = { title: 'Veterinary Medicines Directorate, controlled drugs' };
const MAGAZINE: Source = { title: 'Veterinary Practice magazine, controlled drugs' };
const AMERICAN: Source = { title: 'university page on controlled substances (United States)' };

const uk = (says: string, source: Source, status: Schedule['status'] = 'seen', stale?: string): Schedule => ({
  place: 'United Kingdom',
  says,
  source,
  status,
  ...(stale === undefined ? {} : { stale }),
});
const us = (says: string, status: Schedule['status'] = 'seen'): Schedule => ({
  place: 'United States',
  says,
  source: status === 'memory' ? RECALLED : AMERICAN,
  status,
});

const UNSAFE_BY_MOUTH: Caution = {
  words: 'By mouth listed as unsafe in rabbits; death can follow up to about 10 days after the course ends.',
  own: ['rabbit', 'brown hare'],
  routes: ['PO'],
  isStop: true,
  source: RABBIT_ANTIBIOTICS,
  status: 'seen',
};
const NOT_ON_ARRIVAL: Caution = {
  words: 'Not first on arrival: shock and low flow to the kidneys; better once stable.',
  isStop: false,
  source: BIRD_FRACTURES,
  status: 'seen',
};

export const drugs = [
  {
    id: 'medetomidine',
    name: 'medetomidine',
    family: 'alpha-2 agonist',
    unit: 'mg',
    strengths: [recalled(1)],
    schedules: [uk('not scheduled', RECALLED, 'memory')],
  },
  {
    id: 'dexmedetomidine',
    name: 'dexmedetomidine',
    family: 'alpha-2 agonist',
    unit: 'mg',
    strengths: [seen(0.5), recalled(0.1)],
  },
  { id: 'atipamezole', name: 'atipamezole', family: 'antagonist', unit: 'mg', strengths: [seen(5)] },
  {
    id: 'ketamine',
    name: 'ketamine',
    family: 'dissociative',
    unit: 'mg',
    strengths: [recalled(100)],
    schedules: [
      uk(
        'Schedule 2: register, locked away',
        RCVS,
        'seen',
        'At least two pages in circulation still put ketamine in Schedule 4; it moved to Schedule 2 (in November 2015, from memory).',
      ),
      us('Schedule III'),
    ],
  },
  {
    id: 'butorphanol',
    name: 'butorphanol',
    family: 'opioid',
    unit: 'mg',
    strengths: [recalled(10)],
    schedules: [uk('not scheduled', RECALLED, 'memory'), us('Schedule IV')],
  },
  {
    id: 'buprenorphine',
    name: 'buprenorphine',
    family: 'opioid',
    unit: 'mg',
    strengths: [recalled(0.3), seen(1.8, 'a concentrate of 6 times the usual strength')],
    schedules: [uk('Schedule 3, and locked away', MAGAZINE), us('Schedule III')],
  },
  {
    id: 'methadone',
    name: 'methadone',
    family: 'opioid',
    unit: 'mg',
    strengths: [recalled(10)],
    schedules: [uk('Schedule 2: register, locked away', RCVS), us('Schedule II', 'memory')],
  },
  { id: 'hydromorphone', name: 'hydromorphone', family: 'opioid', unit: 'mg', strengths: [] },
  {
    id: 'fentanyl',
    name: 'fentanyl',
    family: 'opioid',
    unit: 'mg',
    strengths: [],
    schedules: [uk('Schedule 2: register, locked away', RCVS)],
  },
  {
    id: 'midazolam',
    name: 'midazolam',
    family: 'benzodiazepine',
    unit: 'mg',
    strengths: [recalled(5), recalled(1), recalled(2)],
    schedules: [uk('Schedule 3 (its exemption from being locked away is from memory)', VMD), us('Schedule IV')],
  },
  {
    id: 'diazepam',
    name: 'diazepam',
    family: 'benzodiazepine',
    unit: 'mg',
    strengths: [],
    schedules: [uk('Schedule 4', VMD), us('Schedule IV')],
  },
  { id: 'flumazenil', name: 'flumazenil', family: 'antagonist', unit: 'mg', strengths: [recalled(0.1)] },
  {
    id: 'naloxone',
    name: 'naloxone',
    family: 'antagonist',
    unit: 'mg',
    strengths: [recalled(0.4)],
    cautions: [
      { words: 'It takes the pain relief away with the sedation.', isStop: false, source: RECALLED, status: 'memory' },
    ],
  },
  { id: 'alfaxalone', name: 'alfaxalone', family: 'steroid anaesthetic', unit: 'mg', strengths: [recalled(10)] },
  {
    id: 'meloxicam',
    name: 'meloxicam',
    family: 'NSAID',
    unit: 'mg',
    strengths: [
      recalled(5, 'injection'),
      recalled(2, 'injection'),
      recalled(20, 'injection for large animals'),
      recalled(0.5, 'by mouth'),
      recalled(1.5, 'by mouth'),
    ],
    cautions: [NOT_ON_ARRIVAL],
  },
  { id: 'lidocaine', name: 'lidocaine', family: 'local anaesthetic', unit: 'mg', strengths: [seen(20)] },
  {
    id: 'bupivacaine',
    name: 'bupivacaine',
    family: 'local anaesthetic',
    unit: 'mg',
    strengths: [recalled(2.5), recalled(5)],
    cautions: [{ words: 'Never into a vein.', isStop: false, source: RECALLED, status: 'memory' }],
  },
  {
    id: 'amoxicillin-clavulanate',
    name: 'amoxicillin-clavulanate',
    family: 'antibiotic',
    unit: 'mg',
    strengths: [recalled(175, 'injection: 140 of amoxicillin and 35 of clavulanate')],
    cautions: [
      UNSAFE_BY_MOUTH,
      {
        words: 'Say which part the dose means: both together, or the amoxicillin alone.',
        isStop: false,
        source: RECALLED,
        status: 'memory',
      },
    ],
  },
  { id: 'cefalexin', name: 'cefalexin', family: 'antibiotic', unit: 'mg', strengths: [], cautions: [UNSAFE_BY_MOUTH] },
  { id: 'cephalosporin', name: 'cephalosporins', family: 'antibiotic', unit: 'mg', strengths: [] },
  {
    id: 'enrofloxacin',
    name: 'enrofloxacin',
    family: 'antibiotic',
    unit: 'mg',
    strengths: [recalled(25), recalled(50), recalled(100)],
  },
  {
    id: 'marbofloxacin',
    name: 'marbofloxacin',
    family: 'antibiotic',
    unit: 'mg',
    strengths: [recalled(10), recalled(20), recalled(100)],
  },
  {
    id: 'adrenaline',
    name: 'adrenaline (epinephrine)',
    family: 'crash drug',
    unit: 'mg',
    strengths: [seen(1), recalled(0.1)],
  },
  {
    id: 'atropine',
    name: 'atropine',
    family: 'crash drug',
    unit: 'mg',
    strengths: [recalled(0.6), seen(0.4, 'United States'), seen(0.54, 'United States')],
    cautions: [
      {
        words:
          'May do nothing in a rabbit: about 60 % of domestic rabbits have serum atropinesterase; glycopyrronium is preferred.',
        own: ['rabbit'],
        isStop: true,
        source: EMERGENCY_TABLE,
        status: 'seen',
      },
    ],
  },
  { id: 'glycopyrronium', name: 'glycopyrronium', family: 'crash drug', unit: 'mg', strengths: [recalled(0.2)] },
  { id: 'vasopressin', name: 'vasopressin', family: 'crash drug', unit: 'U', strengths: [seen(20)] },
  {
    id: 'glucose',
    name: 'glucose',
    family: 'sugar',
    unit: 'mg',
    strengths: [recalled(500, '50 %')],
    cautions: [{ words: 'Dilute it with at least its own volume.', isStop: false, source: RECALLED, status: 'memory' }],
  },
] as const satisfies readonly Drug[];

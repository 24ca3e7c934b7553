/** Who may do what, by right. Every route of the server and every live message names one; nothing is open without. */
import { ROLES, type Role, type Subject } from './roles.ts';

export type Holder = Role | 'owner' | 'anybody signed in' | 'anybody';

interface RightRow {
  readonly means: string;
  readonly holders: readonly Holder[];
}

export const RIGHTS = {
  anybody: { means: 'what a sign-in page needs: the pages, signing in, who is signed in', holders: ['anybody'] },
  'own account': {
    means: 'own password, own sessions, signing out',
    holders: ['anybody signed in'],
  },
  'read cases': {
    means: 'the board, cases and their files; a carer those of the own patients',
    holders: ROLES,
  },
  'record in cases': {
    means: 'record events and send files; which kinds, says the table of kinds; a carer in the own patients only',
    holders: ROLES,
  },
  'read the practice': {
    means: 'what the practice keeps once and not in a case: its drawer',
    holders: ['surgeon', 'nurse', 'records keeper'],
  },
  'record in the practice': { means: 'record events of the same', holders: ['surgeon', 'nurse', 'records keeper'] },
  'films from machines': {
    means: 'the list of films that X-ray machines sent, and what becomes of them',
    holders: ['surgeon', 'nurse'],
  },
  'print papers': { means: 'theatre sheet, reasons, implant record', holders: ['surgeon', 'nurse', 'records keeper'] },
  'read the calendar': {
    means: 'the days on which patients are looked at, as a calendar file',
    holders: ['surgeon', 'nurse', 'records keeper'],
  },
  'read outcomes': {
    means: 'a table of what became of bones and patients, without names of people',
    holders: ['surgeon', 'records keeper', 'owner'],
  },
  'take copies': { means: 'backups, exports, registers', holders: ['records keeper', 'owner'] },
  'bring in cases': {
    means: 'a case that another practice gave as a copy, with its history as it was signed there',
    holders: ['records keeper', 'owner'],
  },
  demonstration: { means: 'bring the invented patients back, or take them out', holders: ['owner'] },
  'give links': {
    means: 'personal links for carers: make, look at, take back',
    holders: ['surgeon', 'nurse', 'owner'],
  },
  'manage people': { means: 'accounts: make, change the role, new password, switch off', holders: ['owner'] },
  'read the log': { means: 'who signed in, who was refused, who opened what', holders: ['records keeper', 'owner'] },
} as const satisfies Record<string, RightRow>;

export type Right = keyof typeof RIGHTS;

/** Whether whoever asks (null: nobody is signed in) holds that right. */
export function holds(subject: Subject | null, right: Right): boolean {
  const holders: readonly Holder[] = RIGHTS[right].holders;
  if (holders.includes('anybody')) return true;
  if (subject === null) return false;
  if (holders.includes('anybody signed in')) return true;
  if (subject.mustChoosePassword) return false;
  return holders.includes(subject.role) || (subject.isOwner && holders.includes('owner'));
}

/** Whether that case is open to whoever asks. */
export function mayOpen(subject: Subject, caseId: string): boolean {
  return subject.cases === null || subject.cases.includes(caseId);
}

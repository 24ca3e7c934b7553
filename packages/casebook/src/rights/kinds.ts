/** Who may record which kind of event. A kind without a row is the surgeon's alone. */
import type { CaseEvent, EventKind } from '../events.ts';
import type { PracticeEvent, PracticeKind } from '../practice/events.ts';
import { mayOpen } from './rights.ts';
import { ROLES, type Role, type Subject } from './roles.ts';

const SURGEON: readonly Role[] = ['surgeon'];
const WARD: readonly Role[] = ['surgeon', 'nurse'];
const DESK: readonly Role[] = ['surgeon', 'nurse', 'records keeper'];

/** Measuring and charting is the ward's; what decides about the patient is the surgeon's. */
export const KIND_RIGHTS: Partial<Record<EventKind, readonly Role[]>> = {
  'case-opened': DESK,
  'patient-amended': DESK,
  'film-added': WARD,
  'film-removed': WARD,
  'film-view-set': WARD,
  'film-occasion-set': WARD,
  'film-calibrated': WARD,
  'film-clicked': WARD,
  'film-traced': WARD,
  'film-corrected': WARD,
  'hand-measured': WARD,
  'hand-measure-taken-back': WARD,
  'fracture-marked': WARD,
  'bone-joined': WARD,
  'bone-reduced': SURGEON,
  'fracture-described': SURGEON,
  'keep-out-set': SURGEON,
  'corridors-set': SURGEON,
  'soft-tissue-set': WARD,
  'drawer-set': WARD,
  'construct-chosen': SURGEON,
  'plans-ranked': WARD,
  'sheet-printed': DESK,
  'stage-entered': WARD,
  'note-added': ROLES,
  'pin-placed': WARD,
  'pin-skipped': WARD,
  'pin-taken-back': WARD,
  'putty-mixed': WARD,
  'putty-hard': WARD,
  counted: WARD,
  'bench-tested': WARD,
  'plan-placed': WARD,
  'cortices-scored': SURGEON,
  'admission-noted': ROLES,
  'course-decided': SURGEON,
  'reading-taken': WARD,
  'reading-taken-back': WARD,
  'chart-marked': WARD,
  'blood-lost': WARD,
  'fluid-given': WARD,
  'fluids-planned': WARD,
  'feed-planned': WARD,
  'check-ticked': WARD,
  weighed: ROLES,
  fed: ROLES,
  'pin-site-seen': ROLES,
  'limb-use-seen': ROLES,
  'photo-added': ROLES,
  'question-asked': ROLES,
  'question-answered': WARD,
  'aftercare-planned': SURGEON,
  'union-judged': SURGEON,
  'frame-off-decided': SURGEON,
  'frame-taken-off': WARD,
  'recheck-set': WARD,
  'readiness-noted': WARD,
  'forecast-noted': WARD,
  'limit-chosen': SURGEON,
  released: SURGEON,
  'bone-outcome': SURGEON,
  sighted: ROLES,
  'patient-outcome': SURGEON,
  'dose-proposed': WARD,
  'dose-signed': SURGEON,
  'dose-given': WARD,
  'dose-voided': SURGEON,
};

export function mayRecord(role: Role, kind: EventKind): boolean {
  return (KIND_RIGHTS[kind] ?? SURGEON).includes(role);
}

/** Why this person may not record this event, in words; null where nothing stands against it. */
export function refusalOf(subject: Subject, event: Pick<CaseEvent, 'kind' | 'by' | 'caseId'>): string | null {
  if (!mayOpen(subject, event.caseId)) return 'This patient is not one of yours.';
  if (!mayRecord(subject.role, event.kind))
    return `"${event.kind.replaceAll('-', ' ')}" is for ${listed(KIND_RIGHTS[event.kind] ?? SURGEON)} to record; you are signed in as ${subject.role}.`;
  return signerRefusal(subject, event.by);
}

/** Of the practice's record: a kind without a row is open to whoever may record there. */
const PRACTICE_KIND_RIGHTS: Partial<Record<PracticeKind, readonly Role[]>> = {
  'formulary-chosen': SURGEON,
  'formulary-withdrawn': SURGEON,
};

/** Why this person may not record this event of the practice's record, in words; null where nothing stands against it. */
export function practiceRefusalOf(subject: Subject, { kind, by }: Pick<PracticeEvent, 'kind' | 'by'>): string | null {
  const roles = PRACTICE_KIND_RIGHTS[kind];
  if (roles && !roles.includes(subject.role))
    return `"${kind.replaceAll('-', ' ')}" is for ${listed(roles)} to record; you are signed in as ${subject.role}.`;
  return signerRefusal(subject, by);
}

/** Why this person may not sign with that name; null where it is the own one, or typed at this machine. */
function signerRefusal({ name }: Subject, by: string): string | null {
  return name === null || by === name ? null : `It is signed by ${by}, and ${name} is signed in.`;
}

const listed = (roles: readonly Role[]): string => roles.map((role) => `a ${role}`).join(' or ');

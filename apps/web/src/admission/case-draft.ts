/** The form that starts a case, as typed, and the record that follows from it. */

import { readNumber } from '../form/read-number.ts';
import type { NewEvent } from '../sync/new-event.ts';
import { fromField } from '../words/time.ts';

type Opened = Extract<NewEvent, { kind: 'case-opened' }>;
export type Sex = Opened['payload']['sex'];
export type Side = Opened['payload']['side'];

export interface CaseDraft {
  readonly number: string;
  readonly species: string;
  readonly name: string;
  readonly mass: string;
  readonly weighedAt: string;
  readonly ageClass: string;
  readonly sex: Sex;
  readonly bone: string;
  readonly side: Side | null;
}

export type DraftFaults = Partial<Record<keyof CaseDraft, string>>;

const EMPTY: CaseDraft = {
  number: '',
  species: '',
  name: '',
  mass: '',
  weighedAt: '',
  ageClass: 'adult',
  sex: 'unknown',
  bone: '',
  side: null,
};

const SEXES: readonly string[] = ['female', 'male', 'unknown'] satisfies Sex[];
const SIDES: readonly string[] = ['left', 'right'] satisfies Side[];

/** What was kept of an unfinished form; anything unreadable counts as empty. */
export function readCaseDraft(kept: unknown): CaseDraft {
  if (typeof kept !== 'object' || kept === null) return EMPTY;
  const said = Object.entries(kept).filter(([key, value]) => key in EMPTY && typeof value === 'string');
  const draft: CaseDraft = { ...EMPTY, ...Object.fromEntries(said) };
  return {
    ...draft,
    sex: SEXES.includes(draft.sex) ? draft.sex : EMPTY.sex,
    side: draft.side !== null && SIDES.includes(draft.side) ? draft.side : null,
  };
}

/** One sentence for each field that keeps the case from being opened. */
export function faultsOf(draft: CaseDraft): DraftFaults {
  const faults: DraftFaults = {};
  if (draft.species.trim() === '') faults.species = 'Say what animal it is, like red squirrel.';
  if (draft.bone.trim() === '') faults.bone = 'Say which bone is broken, like tibia.';
  if (draft.side === null) faults.side = 'Say which side: left or right.';
  const mass = readNumber(draft.mass);
  if (draft.mass.trim() !== '' && mass === null)
    faults.mass = `"${draft.mass.trim()}" is not a number. Write grams in digits, like 310.`;
  else if (mass !== null && mass <= 0) faults.mass = 'A mass is more than 0 g.';
  if (draft.weighedAt !== '' && fromField(draft.weighedAt) === null) faults.weighedAt = 'This is not a date and time.';
  return faults;
}

/** The entry that opens the case; null while a field is missing or wrong. */
export function openingOf(draft: CaseDraft, number: string): NewEvent | null {
  const { side } = draft;
  if (side === null || Object.keys(faultsOf(draft)).length > 0) return null;
  const massG = readNumber(draft.mass);
  return {
    kind: 'case-opened',
    payload: {
      number: draft.number.trim() || number,
      species: draft.species.trim(),
      name: draft.name.trim(),
      massG,
      weighedAt: massG === null ? null : fromField(draft.weighedAt),
      ageClass: draft.ageClass,
      sex: draft.sex,
      bone: draft.bone.trim(),
      side,
      demonstration: false,
    },
  };
}

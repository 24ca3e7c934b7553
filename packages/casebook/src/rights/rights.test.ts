import { describe, expect, test } from 'vitest';
import { type EventKind, eventSchema } from '../events.ts';
import { KIND_RIGHTS, mayRecord, practiceRefusalOf, refusalOf } from './kinds.ts';
import { holds, mayOpen, RIGHTS, type Right } from './rights.ts';
import { ROLES, type Role, type Subject, THIS_MACHINE } from './roles.ts';

const KINDS = eventSchema.options.map((option): EventKind => option.shape.kind.value);
const person = (role: Role, more: Partial<Subject> = {}): Subject => ({
  ...{ name: 'A. Marsh', role, isOwner: false, cases: null, mustChoosePassword: false },
  ...more,
});
const allRights = Object.keys(RIGHTS) as Right[];

describe('kinds of event', () => {
  test.each(KINDS)('%s has a row', (kind) => {
    expect(Object.keys(KIND_RIGHTS), `give "${kind}" a row in rights/kinds.ts`).toContain(kind);
  });

  test('no row is for a kind that does not exist', () => {
    expect(Object.keys(KIND_RIGHTS).filter((kind) => !KINDS.some((k) => k === kind))).toEqual([]);
  });

  test('a kind without a row is the surgeon’s alone', () => {
    const unheardOf = 'dose-signed-in-a-dream' as EventKind;
    expect(ROLES.filter((role) => mayRecord(role, unheardOf))).toEqual(['surgeon']);
  });

  test('a surgeon may record everything', () => {
    expect(KINDS.filter((kind) => !mayRecord('surgeon', kind))).toEqual([]);
  });

  test.each([
    'construct-chosen',
    'fracture-described',
    'bone-reduced',
    'cortices-scored',
    'dose-signed',
    'dose-voided',
  ] as const)('%s decides about the patient: only a surgeon signs it', (kind) => {
    expect(ROLES.filter((role) => mayRecord(role, kind))).toEqual(['surgeon']);
  });

  test('a carer records only what happens at the rescue', () => {
    const carers = KINDS.filter((kind) => mayRecord('carer', kind));
    expect(carers).toEqual([
      'note-added',
      'admission-noted',
      'weighed',
      'fed',
      'pin-site-seen',
      'limb-use-seen',
      'photo-added',
      'question-asked',
      'sighted',
    ]);
  });
});

describe('one event', () => {
  const note = { kind: 'note-added', by: 'A. Marsh', caseId: 'case-aaaa' } as const;

  test('signed by whoever is signed in, it passes', () => {
    for (const role of ROLES) expect(refusalOf(person(role), note)).toBeNull();
  });

  test('signed by another, it is refused with both names', () => {
    expect(refusalOf(person('surgeon'), { ...note, by: 'T. Okafor' })).toMatch(/T\. Okafor.*A\. Marsh/);
  });

  test('at this machine without accounts the typed name stands', () => {
    expect(refusalOf(THIS_MACHINE, { ...note, by: 'whoever' })).toBeNull();
  });

  test('another’s patient is refused', () => {
    const carer = person('carer', { cases: ['case-bbbb'] });
    expect(refusalOf(carer, note)).toMatch(/not one of yours/);
    expect(refusalOf(carer, { ...note, caseId: 'case-bbbb' })).toBeNull();
  });

  test('the refusal names who may', () => {
    expect(refusalOf(person('nurse'), { ...note, kind: 'construct-chosen' })).toBe(
      '"construct chosen" is for a surgeon to record; you are signed in as nurse.',
    );
  });
});

test('a formulary choice is a surgeon’s to sign; the controlled-drug register is the ward’s', () => {
  const may = (role: Role, kind: 'formulary-chosen' | 'controlled-drug-entered') =>
    practiceRefusalOf(person(role), { kind, by: 'A. Marsh' }) === null;
  expect([may('surgeon', 'formulary-chosen'), may('nurse', 'formulary-chosen')]).toEqual([true, false]);
  expect(may('nurse', 'controlled-drug-entered')).toBe(true);
  expect(practiceRefusalOf(person('surgeon'), { kind: 'formulary-chosen', by: 'T. Okafor' })).toMatch(/A\. Marsh/);
});

describe('rights', () => {
  const held = (subject: Subject | null) => allRights.filter((right) => holds(subject, right));

  test('nobody signed in: the sign-in page, and nothing else', () => {
    expect(held(null)).toEqual(['anybody']);
  });

  test('this machine without accounts: everything', () => {
    expect(held(THIS_MACHINE)).toEqual(allRights);
  });

  test('managing people goes with the owner’s flag, not with a role', () => {
    for (const role of ROLES) {
      expect(holds(person(role), 'manage people')).toBe(false);
      expect(holds(person(role, { isOwner: true }), 'manage people')).toBe(true);
    }
  });

  test('a handed-over password opens nothing but choosing an own one', () => {
    expect(held(person('surgeon', { isOwner: true, mustChoosePassword: true }))).toEqual(['anybody', 'own account']);
  });

  test('a carer reads and records, and has no part in copies, films from machines, people or the log', () => {
    expect(held(person('carer', { cases: [] }))).toEqual(['anybody', 'own account', 'read cases', 'record in cases']);
  });

  test('copies and the log are the records keeper’s', () => {
    expect(held(person('records keeper'))).toEqual(expect.arrayContaining(['take copies', 'read the log']));
    expect(held(person('surgeon'))).not.toContain('take copies');
  });

  test('a case is open to whoever has it, and to all without a list', () => {
    expect([mayOpen(person('carer', { cases: [] }), 'x'), mayOpen(person('nurse'), 'x')]).toEqual([false, true]);
  });
});

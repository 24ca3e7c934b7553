/** The aftercare plan while a vet writes it: a row for each task, lines for what to look for, and the entry that follows. */
import type { CaseState, DoseInCase } from '@bonewright/casebook';
import type { FieldSpec, Outcome, Values } from '../form/entry-form.tsx';

/** Starting lines for the vet to change; common practice, no source but the signs of trouble (care of fixators in dogs and cats). */
const LOOK_FOR = [
  'each pin at the skin: dry, or a dry crust; a little thin fluid in the first days is expected',
  'bar, putty and pins: nothing cracked, bent or loose',
  'it eats, passes droppings and uses the limb',
];
const RING_WHEN = [
  'a pin moves, or the bar is loose or cracked',
  'the limb hangs, swells or turns cold',
  'a pin site is wet again after it was dry, smells or is sore',
  'nothing was eaten for 12 hours',
];
const MOST_TASKS = 40;
const NO_DOSE = 'none';

/** What the form shows: the plan that stands, or lines to start from. */
export function aftercareValues(state: CaseState): Values<string> {
  const plan = state.care.aftercare?.value;
  const tasks = plan?.tasks ?? [];
  const rows = tasks.flatMap(({ what, when, doseId }, i) => [
    [`what-${i}`, what],
    [`when-${i}`, when],
    [`dose-${i}`, doseId ?? NO_DOSE],
  ]);
  return {
    ...Object.fromEntries(rows),
    lookFor: (plan?.lookFor ?? LOOK_FOR).join('\n'),
    ringWhen: (plan?.ringWhen ?? RING_WHEN).join('\n'),
    phone: plan?.phone ?? '',
    housing: plan?.housing ?? '',
    recheckOn: plan?.recheckOn ?? '',
  };
}

/** Signed doses that stand: the only ones that a task may name. */
const signedDoses = (state: CaseState): DoseInCase[] =>
  state.doses.filter(({ signed, voided }) => signed !== null && voided === null);

const rowCount = (values: Values<string>): number =>
  Object.keys(values).filter((key) => key.startsWith('what-') && (values[key] ?? '').trim() !== '').length;

export function aftercareFields(state: CaseState, values: Values<string>): FieldSpec<string>[] {
  const doses = signedDoses(state);
  const options = [
    [NO_DOSE, 'no dose'] as const,
    ...doses.map(({ doseId, line, signed }) => [doseId, `${line.drug} ${signed?.value.drawnMl} ml`] as const),
  ];
  const rows = Array.from({ length: Math.min(rowCount(values) + 1, MOST_TASKS) }, (_, i) => i);
  return [
    ...rows.flatMap((i): FieldSpec<string>[] => [
      {
        kind: 'text',
        key: `what-${i}`,
        label: `Task ${i + 1}`,
        options: ['Weigh', 'Look at each pin', 'Feed', 'Medicine'],
      },
      { kind: 'text', key: `when-${i}`, label: 'When', options: ['every morning before food', 'morning and evening'] },
      ...(doses.length > 0 && values[`what-${i}`]
        ? [{ kind: 'choice' as const, key: `dose-${i}`, label: 'Signed dose', isWide: true, options }]
        : []),
    ]),
    { kind: 'area', key: 'lookFor', label: 'What to look for, a line each', isWide: true },
    { kind: 'area', key: 'ringWhen', label: 'When to ring, a line each', isWide: true },
    { kind: 'text', key: 'phone', label: 'Telephone' },
    { kind: 'day', key: 'recheckOn', label: 'Next look on' },
    { kind: 'text', key: 'housing', label: 'How it lives', isWide: true },
  ];
}

const lines = (text: string | undefined): string[] =>
  (text ?? '')
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean);

export function aftercareOutcome(state: CaseState, values: Values<string>): Outcome<string> {
  const said = (key: string): string => (values[key] ?? '').trim();
  const rows = Array.from({ length: MOST_TASKS }, (_, i) => i).filter((i) => said(`what-${i}`) !== '');
  const untimed = rows.find((i) => said(`when-${i}`) === '');
  if (untimed !== undefined) return { faults: { [`when-${untimed}`]: 'Say when.' } };
  const doses = signedDoses(state);
  const tasks = rows.map((i) => ({
    what: said(`what-${i}`),
    when: said(`when-${i}`),
    doseId: doses.find(({ doseId }) => doseId === said(`dose-${i}`))?.doseId ?? null,
  }));
  const payload = {
    tasks,
    lookFor: lines(values.lookFor),
    ringWhen: lines(values.ringWhen),
    phone: said('phone'),
    housing: said('housing'),
    recheckOn: said('recheckOn') || null,
  };
  const entries = [{ kind: 'aftercare-planned' as const, payload }];
  const missing = [
    tasks.length === 0 && 'No task is written.',
    payload.ringWhen.length === 0 && 'Nothing says when to ring.',
    payload.phone === '' && 'No telephone number.',
    payload.recheckOn === null && 'No day for the next look.',
  ].filter((line) => line !== false);
  return missing.length === 0
    ? { entries }
    : { ask: 'The aftercare has gaps', missing, common: ['stays here tonight', 'said by telephone'], entries };
}

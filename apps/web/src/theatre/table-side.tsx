/** Beside the table: putty with its minutes, and what was counted in and out. */
import type { CaseState } from '@bonewright/casebook';
import { useState } from 'react';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { Field } from '../form/field.tsx';
import { numberFault, readNumber } from '../form/read-number.ts';
import { figure } from '../plan/words.ts';
import type { Append } from '../sync/new-event.ts';
import { useDraft } from '../sync/use-draft.ts';
import { Stepper } from './stepper.tsx';
import { minutesSince, useNow } from './use-now.ts';

interface TableSideProps {
  readonly state: CaseState;
  readonly append: Append;
  /** What the plan's column weighs; null without a plan. */
  readonly columnG: number | null;
}

export function TableSide({ state, append, columnG }: TableSideProps) {
  return (
    <div className="theatre-two">
      <Putty {...{ state, append, columnG }} />
      <Counts state={state} append={append} />
    </div>
  );
}

const readText = (kept: unknown): string => (typeof kept === 'string' ? kept : '');

function Putty({ state, append, columnG }: TableSideProps) {
  const { caseId } = state;
  const { putty } = state.theatre;
  const grams = useDraft(`putty-grams.${caseId}`, readText);
  const minutes = useDraft(`putty-minutes.${caseId}`, readText);
  const now = useNow();
  const massG = readNumber(grams.value);
  const why = numberFault(grams.value) ?? numberFault(minutes.value);
  const mix = () => {
    if (massG === null) return;
    const at = new Date().toISOString();
    append([{ kind: 'putty-mixed', payload: { grams: massG, at, workingMinutes: readNumber(minutes.value) } }]);
    grams.clear();
    minutes.clear();
  };
  return (
    <section aria-labelledby="putty-title" className="theatre-column">
      <h3 id="putty-title">Putty</h3>
      {putty && (
        <>
          <p className="theatre-figure">
            {putty.hard
              ? minutesSince(putty.mixed.value.at, Date.parse(putty.hard.value.at))
              : minutesSince(putty.mixed.value.at, now)}{' '}
            <span className="theatre-unit">min</span>
          </p>
          <p className="theatre-note">
            {putty.mixed.value.grams} g, {putty.hard ? 'from mixing until it was hard' : 'since mixing'}
            {putty.mixed.value.workingMinutes === null
              ? ''
              : `; workable for ${putty.mixed.value.workingMinutes} min, as you typed it`}
          </p>
        </>
      )}
      {putty && !putty.hard ? (
        <button
          type="button"
          className="button button-main"
          onClick={() => append([{ kind: 'putty-hard', payload: { at: new Date().toISOString() } }])}
        >
          It is hard now
        </button>
      ) : null}
      <form
        className="theatre-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (!why) mix();
        }}
      >
        <Field
          label="Putty to mix"
          unit="g"
          inputMode="decimal"
          value={grams.value}
          onChange={grams.set}
          help={
            columnG === null
              ? null
              : `The column of the plan weighs ${figure(columnG)} g by the usual density of its material; some is always left over.`
          }
        />
        <Field
          label="Workable for, as the packet says"
          unit="min"
          inputMode="decimal"
          value={minutes.value}
          onChange={minutes.set}
          why={why}
          help="No figure is kept here: products differ. Leave it empty where you do not know."
        />
        <button type="submit" className="button" disabled={massG === null || why !== null}>
          {putty ? 'Mixing again now' : 'Mixing now'}
        </button>
      </form>
      <p className="theatre-note">
        It warms as it sets: a thick column more than a thin one. Feel it, and cool the pins.
      </p>
    </section>
  );
}

/** What theatres count; others are typed. */
const USUAL = ['swabs', 'needles', 'blades'];

function Counts({ state, append }: Omit<TableSideProps, 'columnG'>) {
  const { counts } = state.theatre;
  const [other, setOther] = useState('');
  const known = counts.map(({ value }) => value.what);
  const rows = [...known, ...USUAL.filter((what) => !known.includes(what))];
  const count = (what: string, change: { readonly in?: number; readonly out?: number }) => {
    const before = counts.find(({ value }) => value.what === what)?.value ?? { what, in: 0, out: 0 };
    const whole = (n: number) => Math.max(0, Math.round(n));
    const { in: into = before.in, out = before.out } = change;
    append([{ kind: 'counted', payload: { what, in: whole(into), out: whole(out) } }]);
  };
  const add = () => {
    const what = other.trim();
    if (what && !rows.includes(what)) count(what, {});
    setOther('');
  };
  return (
    <section aria-labelledby="counts-title" className="theatre-column">
      <h3 id="counts-title">Counts</h3>
      <ul className="theatre-counts">
        {rows.map((what) => {
          const { in: into, out } = counts.find(({ value }) => value.what === what)?.value ?? { in: 0, out: 0 };
          return (
            <li key={what}>
              <b>{what}</b>
              <Stepper
                label={`${what} in`}
                unit="pieces"
                step={1}
                decimals={0}
                value={into}
                onChange={(n) => count(what, { in: n })}
              />
              <Stepper
                label={`${what} out`}
                unit="pieces"
                step={1}
                decimals={0}
                value={out}
                onChange={(n) => count(what, { out: n })}
              />
              <Tally into={into} out={out} />
            </li>
          );
        })}
      </ul>
      <form
        className="theatre-form theatre-add"
        onSubmit={(event) => {
          event.preventDefault();
          add();
        }}
      >
        <Field label="Something else to count" value={other} onChange={setOther} />
        <button type="submit" className="button" disabled={other.trim() === ''}>
          Add
        </button>
      </form>
    </section>
  );
}

function Tally({ into, out }: { readonly into: number; readonly out: number }) {
  if (into === 0 && out === 0) return <span className="quiet">not counted</span>;
  const missing = into - out;
  if (missing === 0)
    return (
      <span className="verdict verdict-good">
        <VerdictMark verdict="good" />
        all back
      </span>
    );
  return (
    <span className="verdict verdict-watch">
      <VerdictMark verdict="watch" />
      {missing > 0 ? `${missing} not back` : `${-missing} too many`}
    </span>
  );
}

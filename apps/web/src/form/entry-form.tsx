/**
 * A form that becomes entries of the record: fields as a list, what was touched kept on this device until it is recorded.
 * Nothing is refused for being incomplete; what is wrong is said at its field, what is missing asks for a reason.
 */
import { type EventKind, mayRecord } from '@bonewright/casebook';
import { Fragment, type ReactNode, useRef, useState } from 'react';
import type { Append, NewEvent } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { useDraft } from '../sync/use-draft.ts';
import { Choice } from './choice.tsx';
import { Field } from './field.tsx';
import { ReasonDialog } from './reason-dialog.tsx';
import { TextArea } from './text-area.tsx';

export type Values<K extends string> = Readonly<Record<K, string>>;
export type Faults<K extends string> = Readonly<Partial<Record<K, string>>>;

type Kind =
  | { readonly kind: 'text'; readonly options?: readonly string[] }
  | { readonly kind: 'number'; readonly unit: string }
  | { readonly kind: 'time' | 'day' | 'area' }
  | { readonly kind: 'choice'; readonly options: readonly (readonly [value: string, word: string])[] };

export type FieldSpec<K extends string> = Kind & {
  readonly key: K;
  readonly label: string;
  readonly help?: ReactNode;
  /** Takes the whole width of the form. */
  readonly isWide?: boolean;
};

/** What follows from the values: entries, faults at fields, or entries that ask for a reason first. */
export type Outcome<K extends string> =
  | { readonly entries: readonly NewEvent[] }
  | { readonly faults: Faults<K> }
  | {
      readonly ask: string;
      readonly missing: readonly string[];
      readonly common: readonly string[];
      readonly entries: readonly NewEvent[];
    };

interface EntryFormProps<K extends string> {
  /** Name of the form for a screen reader. */
  readonly name: string;
  readonly draftKey: string;
  /** The kind that it records: who may not, sees no form. */
  readonly records: EventKind;
  readonly initial: Values<K>;
  readonly fields: (values: Values<K>) => readonly FieldSpec<K>[];
  readonly word: string;
  readonly outcome: (values: Values<K>) => Outcome<K>;
  readonly append: Append;
  /** Stands across the form, below that field. */
  readonly below?: {
    readonly key: K;
    readonly node: (change: (part: Readonly<Record<string, string>>) => void) => ReactNode;
  };
}

type Asked = Extract<Outcome<string>, { readonly ask: string }>;

export function EntryForm<K extends string>(props: EntryFormProps<K>) {
  const { name, draftKey, records, initial, fields, word, outcome, append, below } = props;
  const role = useRole();
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft(draftKey, readTouched);
  const [faults, setFaults] = useState<Faults<string>>({});
  const [asked, setAsked] = useState<Asked | null>(null);
  if (!mayRecord(role, records)) return <p className="quiet">This is not for a {role} to record.</p>;
  const values: Values<K> = { ...initial, ...draft.value };
  const change = (part: Readonly<Record<string, string>>) => draft.set({ ...draft.value, ...part });
  const record = (entries: readonly NewEvent[]) => {
    append(entries);
    draft.clear();
    setFaults({});
    setAsked(null);
  };
  const submit = () => {
    const said = outcome(values);
    if ('ask' in said) setAsked(said);
    else if ('entries' in said) record(said.entries);
    else {
      setFaults(said.faults);
      requestAnimationFrame(() =>
        form.current?.querySelector<HTMLElement>('[aria-invalid], .field:has(.field-why) input')?.focus(),
      );
    }
  };
  return (
    <form
      ref={form}
      className="entry-form"
      aria-label={name}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      {fields(values).map((spec) => (
        <Fragment key={spec.key}>
          <div className={spec.isWide ? 'entry-wide' : undefined}>
            <OneField
              spec={spec}
              value={values[spec.key] ?? ''}
              why={faults[spec.key] ?? null}
              onChange={(text) => change({ [spec.key]: text })}
            />
          </div>
          {below?.key === spec.key && <div className="entry-wide">{below.node(change)}</div>}
        </Fragment>
      ))}
      <p className="entry-wide">
        <button type="submit" className="button">
          {word}
        </button>
      </p>
      {asked && (
        <ReasonDialog
          title={asked.ask}
          common={asked.common}
          actions={[{ word, act: (why) => record(asked.entries.map((entry) => ({ ...entry, why }))) }]}
          onClose={() => setAsked(null)}
        >
          <ul className="entry-missing">
            {asked.missing.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </ReasonDialog>
      )}
    </form>
  );
}

interface OneFieldProps<K extends string> {
  readonly spec: FieldSpec<K>;
  readonly value: string;
  readonly why: string | null;
  readonly onChange: (text: string) => void;
}

function OneField<K extends string>({ spec, value, why, onChange }: OneFieldProps<K>) {
  const { label, help } = spec;
  const said = { label, value, onChange, why, ...(help === undefined ? {} : { help }) };
  switch (spec.kind) {
    case 'choice':
      return (
        <>
          <Choice
            label={label}
            options={spec.options}
            value={value === '' ? null : value}
            onChange={onChange}
            why={why}
          />
          {help && <p className="caption">{help}</p>}
        </>
      );
    case 'number':
      return <Field {...said} unit={spec.unit} inputMode="decimal" />;
    case 'time':
      return <Field {...said} type="datetime-local" />;
    case 'day':
      return <Field {...said} type="date" />;
    case 'area':
      return <TextArea {...said} />;
    case 'text':
      return <Field {...said} {...(spec.options ? { options: spec.options } : {})} />;
  }
}

/** What somebody touched; anything unreadable counts as untouched. */
function readTouched(kept: unknown): Readonly<Record<string, string>> {
  if (typeof kept !== 'object' || kept === null) return {};
  return Object.fromEntries(Object.entries(kept).filter(([, value]) => typeof value === 'string'));
}

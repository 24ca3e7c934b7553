/** What was delivered or found in the drawer, typed in; what is half typed stays on this device. */
import type { Stock } from '@bonewright/casebook';
import { useState } from 'react';
import { Choose } from '../doses/choose.tsx';
import { Field } from '../form/field.tsx';
import { COLUMN_MATERIALS, MATERIAL_WORDS, PIN_MATERIALS } from '../plan/drawer/materials.ts';
import { practiceRecord } from '../sync/records.ts';
import { NOBODY_NAMED, useSigner } from '../sync/signer.ts';
import { useDraft } from '../sync/use-draft.ts';
import { PUT_IN_USES, type PutInDraft, putInEntries, readPutIn, USE_WORDS } from './put-in-draft.ts';

export function PutIn({ stock }: { readonly stock: Stock }) {
  const { value, set, clear } = useDraft('stock-put-in', readPutIn);
  const [said, say] = useState<{ readonly isRefused: boolean; readonly words: string } | null>(null);
  const by = useSigner();
  const { use } = value;
  const isSized = use !== '' && use !== 'needle' && use !== 'putty';
  const isCounted = use !== '' && use !== 'column';
  const change = (part: Partial<PutInDraft>) => {
    say(null);
    set({ ...value, ...part });
  };
  const putIn = () => {
    const outcome = putInEntries(value, stock);
    if ('refused' in outcome) return say({ isRefused: true, words: `Not put in: ${outcome.refused}` });
    practiceRecord().append(outcome.entries);
    clear();
    say({ isRefused: false, words: `${outcome.itemId} is in the stock.` });
  };
  const number = (key: 'diameter' | 'core' | 'gauge' | 'amount' | 'lowAt', label: string, unit: string) => (
    <Field label={label} unit={unit} inputMode="decimal" value={value[key]} onChange={(to) => change({ [key]: to })} />
  );
  return (
    <form
      className="dose-form stock-put-in"
      aria-label="Put something in"
      onSubmit={(event) => {
        event.preventDefault();
        putIn();
      }}
    >
      <h2>Put something in</h2>
      <div className="dose-typed">
        <Choose
          label="What"
          value={use}
          options={PUT_IN_USES}
          words={USE_WORDS}
          onChange={(next) => change({ use: PUT_IN_USES.find((each) => each === next) ?? '', material: '' })}
        />
        {use === 'needle' && number('gauge', 'Gauge', 'G')}
        {isSized && number('diameter', 'Diameter', 'mm')}
        {use.startsWith('threaded') && number('core', 'Core', 'mm')}
        {use !== '' && (
          <Choose
            label="Material"
            value={value.material}
            options={use === 'column' || use === 'putty' ? COLUMN_MATERIALS : PIN_MATERIALS}
            words={MATERIAL_WORDS}
            onChange={(material) => change({ material })}
          />
        )}
        {isCounted && (
          <>
            {number('amount', 'How much', use === 'putty' ? 'g' : 'pieces')}
            <Field label="Batch, as on the label" value={value.batch} onChange={(batch) => change({ batch })} />
            <Field
              label="Good until, as on the label"
              type="date"
              value={value.expires}
              onChange={(expires) => change({ expires })}
            />
            {number('lowAt', 'Say that it is low at', use === 'putty' ? 'g' : 'pieces')}
          </>
        )}
        <div className="dose-wide">
          <button type="submit" className="button button-main">
            Put in as {by === NOBODY_NAMED ? '(say who you are)' : by}
          </button>
          {said && (
            <p className={said.isRefused ? 'field-why' : undefined} role={said.isRefused ? 'alert' : 'status'}>
              {said.words}
            </p>
          )}
        </div>
      </div>
    </form>
  );
}

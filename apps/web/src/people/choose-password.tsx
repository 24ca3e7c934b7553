/** An own password in place of the one that was handed over, or of the old one. */
import { useState } from 'react';
import { Field } from '../form/field.tsx';
import { tell } from '../sync/api.ts';
import { PeopleForm } from './people-form.tsx';
import { useDoing } from './use-doing.ts';

export function ChoosePassword({ onDone }: { readonly onDone: () => void }) {
  const [current, setCurrent] = useState('');
  const [next, setNext] = useState('');
  const { why, isDoing, run } = useDoing();
  const choose = async () => {
    if (!(await run(() => tell('PUT', '/api/account/password', { current, next })))) return;
    setCurrent('');
    setNext('');
    onDone();
  };
  return (
    <PeopleForm doing={{ why, isDoing }} does="Choose it" onSend={() => void choose()}>
      <Field
        label="Password so far"
        type="password"
        value={current}
        onChange={setCurrent}
        autoComplete="current-password"
      />
      <Field
        label="New password"
        type="password"
        value={next}
        onChange={setNext}
        autoComplete="new-password"
        help="12 characters or more. Three or four words of your own do well."
      />
    </PeopleForm>
  );
}

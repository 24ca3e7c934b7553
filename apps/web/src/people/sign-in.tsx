/** Name and password, on a page of its own or above the page whose session has ended. */
import { useEffect, useState } from 'react';
import { Field } from '../form/field.tsx';
import { useTitle } from '../shell/use-title.ts';
import { recordsWaiting } from '../sync/outbox.ts';
import { signIn } from '../sync/session.ts';
import { PeopleForm } from './people-form.tsx';
import { useDoing } from './use-doing.ts';

export function SignInForm({ was, onDone }: { readonly was: string; readonly onDone: () => void }) {
  const [name, setName] = useState(was);
  const [password, setPassword] = useState('');
  const { why, isDoing, run } = useDoing();
  return (
    <PeopleForm
      doing={{ why, isDoing }}
      does="Sign in"
      onSend={() => void run(() => signIn(name, password)).then((isIn) => isIn && onDone())}
    >
      <Field label="Name" value={name} onChange={setName} autoComplete="username" help="As it stands in the record." />
      <Field label="Password" type="password" value={password} onChange={setPassword} autoComplete="current-password" />
    </PeopleForm>
  );
}

export function SignInPage() {
  useTitle('Sign in');
  const waiting = useWaiting();
  return (
    <main id="main" tabIndex={-1} className="page narrow people-door">
      <h1>Sign in</h1>
      {waiting > 0 && (
        <p className="callout callout-watch">
          What was entered in {waiting === 1 ? '1 record' : `${waiting} records`} is kept on this device and is sent
          once you sign in.
        </p>
      )}
      <SignInForm was="" onDone={() => location.reload()} />
      <p className="quiet">Password forgotten? An owner gives you a new one, on the page People.</p>
    </main>
  );
}

/** How many records have entries that were not sent. */
function useWaiting(): number {
  const [count, setCount] = useState(0);
  useEffect(() => {
    void recordsWaiting()
      .then((ids) => setCount(ids.length))
      .catch(() => undefined);
  }, []);
  return count;
}

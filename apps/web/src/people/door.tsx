/** Lets the pages be seen by whoever may: asks to sign in, to choose a password, or to sign in again above the page. */
import type { ReactNode } from 'react';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { listenToServer } from '../sync/records.ts';
import { useSession } from '../sync/session.ts';
import { ChoosePassword } from './choose-password.tsx';
import { SignInForm, SignInPage } from './sign-in.tsx';

export function Door({ children }: { readonly children: ReactNode }) {
  const { kind, person } = useSession();
  if (kind === 'looking') return null;
  if (kind === 'signed-out') return location.pathname === '/carer' ? null : <SignInPage />;
  if (person?.mustChoosePassword)
    return (
      <main id="main" tabIndex={-1} className="page narrow people-door">
        <h1>A password of your own</h1>
        <p>The one you were given opens this page only, {person.name}.</p>
        <ChoosePassword onDone={() => location.reload()} />
      </main>
    );
  return (
    <>
      {kind === 'ended' && (
        <section className="page ended" aria-label="Sign in again">
          <div className="callout callout-watch">
            <strong role="status">
              <VerdictMark verdict="watch" />
              Your session has ended. Nothing is lost: what you enter is kept on this device.
            </strong>
            <SignInForm was={person?.name ?? ''} onDone={listenToServer} />
          </div>
        </section>
      )}
      {children}
    </>
  );
}

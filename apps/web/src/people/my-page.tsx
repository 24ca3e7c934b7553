/** The own account: sessions, password, signing out. */
import { useCallback, useEffect, useState } from 'react';
import { Link } from 'wouter';
import { FieldWhy } from '../form/field.tsx';
import { ThemeSwitch } from '../shell/theme-switch.tsx';
import { useTitle } from '../shell/use-title.ts';
import { ask, tell } from '../sync/api.ts';
import { signOut, useSession } from '../sync/session.ts';
import { moment } from '../words/time.ts';
import { ChoosePassword } from './choose-password.tsx';
import { useDoing } from './use-doing.ts';

interface OwnSession {
  readonly id: string;
  readonly startedAt: string;
  readonly seenAt: string;
  readonly address: string;
  readonly device: string;
  readonly isThis: boolean;
}

export function MyPage() {
  const { person } = useSession();
  useTitle('My account');
  const [sessions, setSessions] = useState<readonly OwnSession[]>([]);
  const [said, setSaid] = useState('');
  const { why, run } = useDoing();
  const read = useCallback(
    () => ask<{ sessions: OwnSession[] }>('/api/account/sessions').then((answer) => setSessions(answer.sessions)),
    [],
  );
  useEffect(() => void run(read), [read, run]);
  const end = (path: string) => run(() => tell('DELETE', path).then(read));
  if (!person) return <p className="page">There are no accounts here yet.</p>;
  return (
    <div className="page">
      <header className="head">
        <h1>{person.name}</h1>
        <div className="head-right">
          <ThemeSwitch />
          <Link href="/people" className="button">
            People
          </Link>
          <Link href="/" className="button">
            All patients
          </Link>
          <button type="button" className="button button-main" onClick={() => void run(signOut)}>
            Sign out
          </button>
        </div>
      </header>
      <main id="main" tabIndex={-1} className="people">
        <p>
          Signs as {person.name}, {person.role}
          {person.isOwner ? ', owner' : ''}.
        </p>
        {why && <FieldWhy why={why} />}
        <section>
          <h2>Signed in</h2>
          <ul className="people-list">
            {sessions.map((session) => (
              <li key={session.id}>
                <span>
                  <b>{session.isThis ? 'Here' : session.address}</b>
                  <span className="caption">
                    {' '}
                    since {moment(session.startedAt)}, last seen {moment(session.seenAt)}
                  </span>
                  <span className="caption people-device">{session.device}</span>
                </span>
                {!session.isThis && (
                  <button
                    type="button"
                    className="button"
                    onClick={() => void end(`/api/account/sessions/${session.id}`)}
                  >
                    End it
                  </button>
                )}
              </li>
            ))}
          </ul>
          {sessions.length > 1 && (
            <button type="button" className="button" onClick={() => void end('/api/account/sessions')}>
              Sign out everywhere else
            </button>
          )}
        </section>
        {!person.isLink && (
          <section>
            <h2>Password</h2>
            <ChoosePassword onDone={() => setSaid('The new password holds. Everywhere else you are signed out.')} />
            <p role="status">{said}</p>
          </section>
        )}
      </main>
    </div>
  );
}

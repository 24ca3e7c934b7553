/** Who works here: accounts, carers' links, and the log, each for whoever may see it. */
import { holds, type Right } from '@bonewright/casebook';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { ThemeSwitch } from '../shell/theme-switch.tsx';
import { useTitle } from '../shell/use-title.ts';
import { useSession } from '../sync/session.ts';
import { Accounts } from './accounts.tsx';
import { CarerLinks } from './carer-links.tsx';
import { FirstOwner } from './first-owner.tsx';
import { LogList } from './log-list.tsx';

export function PeoplePage() {
  const { person } = useSession();
  useTitle('People');
  const may = (right: Right) => person !== null && holds({ ...person, cases: null }, right);
  const isForOthers = !['manage people', 'give links', 'read the log'].some((right) => may(right as Right));
  return (
    <Frame>
      {person === null && <FirstOwner />}
      {person !== null && isForOthers && <p>Accounts are an owner's to manage.</p>}
      {may('manage people') && <Accounts own={person?.name ?? ''} />}
      {may('give links') && <CarerLinks />}
      {may('read the log') && <LogList />}
    </Frame>
  );
}

function Frame({ children }: { readonly children: ReactNode }) {
  return (
    <div className="page">
      <header className="head">
        <h1>People</h1>
        <div className="head-right">
          <ThemeSwitch />
          <Link href="/" className="button">
            All patients
          </Link>
        </div>
      </header>
      <main id="main" tabIndex={-1} className="people">
        {children}
      </main>
    </div>
  );
}

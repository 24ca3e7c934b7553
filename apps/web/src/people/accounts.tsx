/** Accounts: making one, and the list. A password to hand over is shown once. */
import type { Role } from '@bonewright/casebook';
import { useCallback, useEffect, useState } from 'react';
import { Choice } from '../form/choice.tsx';
import { Field } from '../form/field.tsx';
import { ask, tell } from '../sync/api.ts';
import { ROLE_WORDS } from './first-owner.tsx';
import { PeopleForm } from './people-form.tsx';
import { type ListedPerson, PersonRow } from './person-row.tsx';
import { useDoing } from './use-doing.ts';

export function Accounts({ own }: { readonly own: string }) {
  const [people, setPeople] = useState<readonly ListedPerson[]>([]);
  const [handOver, setHandOver] = useState<{ readonly name: string; readonly password: string } | null>(null);
  const [name, setName] = useState('');
  const [role, setRole] = useState<Role>('nurse');
  const { why, isDoing, run } = useDoing();
  const read = useCallback(
    () => ask<{ people: ListedPerson[] }>('/api/people').then((answer) => setPeople(answer.people)),
    [],
  );
  useEffect(() => void run(read), [read, run]);
  const make = () =>
    run(async () => {
      const { password } = await tell<{ password: string }>('POST', '/api/people', { name, role });
      setHandOver({ name, password });
      setName('');
      await read();
    });
  return (
    <section>
      <h2>Accounts</h2>
      {handOver && (
        <div className="callout callout-good" role="status">
          <strong>Hand this to {handOver.name}, now: it is not shown again</strong>
          <p className="people-password">{handOver.password}</p>
          <p>It holds for a week and opens one page: choosing an own password.</p>
        </div>
      )}
      <ul className="people-list">
        {people.map((person) => (
          <PersonRow
            key={person.id}
            person={person}
            isSelf={person.name === own}
            onChange={read}
            onPassword={(whose, password) => setHandOver({ name: whose, password })}
          />
        ))}
      </ul>
      <PeopleForm doing={{ why, isDoing }} does="Make the account" onSend={() => void make()}>
        <h3>Somebody new</h3>
        <Field label="Name" value={name} onChange={setName} help="As it is to stand in the record, for good." />
        <Choice label="Role" options={ROLE_WORDS} value={role} onChange={setRole} />
      </PeopleForm>
    </section>
  );
}

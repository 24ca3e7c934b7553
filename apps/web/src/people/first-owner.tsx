/** The first account: made at this machine, an owner, signed in at once. */
import { ROLES, type Role } from '@bonewright/casebook';
import { useState } from 'react';
import { Choice } from '../form/choice.tsx';
import { Field } from '../form/field.tsx';
import { tell } from '../sync/api.ts';
import { PeopleForm } from './people-form.tsx';
import { useDoing } from './use-doing.ts';

export const ROLE_WORDS = ROLES.map((role): readonly [Role, string] => [role, role]);

export function FirstOwner() {
  const [name, setName] = useState('');
  const [role, setRole] = useState<Role>('surgeon');
  const [password, setPassword] = useState('');
  const { why, isDoing, run } = useDoing();
  const make = async () => {
    if (await run(() => tell('POST', '/api/session/first', { name, role, password }))) location.reload();
  };
  return (
    <section>
      <p className="lead">
        Nobody has an account: whoever sits at this machine owns the records, and nothing else can reach them. To open
        Bonewright to the practice's network, make the first account. From then on everybody signs in, here too.
      </p>
      <PeopleForm doing={{ why, isDoing }} does="Make the first account" onSend={() => void make()}>
        <Field
          label="Name"
          value={name}
          onChange={setName}
          autoComplete="username"
          help="As it is to stand in the record, for good."
        />
        <Choice label="Role" options={ROLE_WORDS} value={role} onChange={setRole} />
        <Field
          label="Password"
          type="password"
          value={password}
          onChange={setPassword}
          autoComplete="new-password"
          help="12 characters or more. Three or four words of your own do well."
        />
      </PeopleForm>
    </section>
  );
}

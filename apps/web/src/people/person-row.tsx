/** One person on the page People, and what an owner may change. */
import type { Role } from '@bonewright/casebook';
import { Choice } from '../form/choice.tsx';
import { FieldWhy } from '../form/field.tsx';
import { tell } from '../sync/api.ts';
import { ROLE_WORDS } from './first-owner.tsx';
import { useDoing } from './use-doing.ts';

export interface ListedPerson {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly isOwner: boolean;
  readonly isActive: boolean;
  readonly temporaryUntil: string | null;
}

interface PersonRowProps {
  readonly person: ListedPerson;
  readonly isSelf: boolean;
  readonly onChange: () => Promise<void>;
  readonly onPassword: (name: string, password: string) => void;
}

export function PersonRow({ person, isSelf, onChange, onPassword }: PersonRowProps) {
  const { why, isDoing, run } = useDoing();
  const path = `/api/people/${person.id}`;
  const change = (part: object) => void run(() => tell('PATCH', path, part).then(onChange));
  const newPassword = () =>
    run(async () => {
      const { password } = await tell<{ password: string }>('POST', `${path}/password`);
      onPassword(person.name, password);
      await onChange();
    });
  return (
    <li>
      <span>
        <b>{person.name}</b>
        <span className="caption">
          {person.isOwner ? ' owner' : ''}
          {person.isActive ? '' : ' switched off'}
          {person.temporaryUntil ? ' has not chosen a password yet' : ''}
        </span>
        {why && <FieldWhy why={why} />}
      </span>
      <Choice
        label={`Role of ${person.name}`}
        isLabelHidden
        options={ROLE_WORDS}
        value={person.role}
        onChange={(role) => change({ role })}
      />
      <span className="people-actions">
        <button
          type="button"
          className="button-small"
          disabled={isDoing}
          onClick={() => change({ isOwner: !person.isOwner })}
        >
          {person.isOwner ? 'No owner any more' : 'Make an owner'}
          <span className="sr-only">: {person.name}</span>
        </button>
        {!isSelf && (
          <button type="button" className="button-small" disabled={isDoing} onClick={() => void newPassword()}>
            New password<span className="sr-only"> for {person.name}</span>
          </button>
        )}
        <button
          type="button"
          className="button-small"
          disabled={isDoing}
          onClick={() => change({ isActive: !person.isActive })}
        >
          {person.isActive ? 'Switch off' : 'Switch on'}
          <span className="sr-only">: {person.name}</span>
        </button>
      </span>
    </li>
  );
}

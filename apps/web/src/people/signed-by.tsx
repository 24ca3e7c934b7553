/** Who signs: the person signed in, or the name typed at a machine without accounts. */
import { Link } from 'wouter';
import { SignerButton } from '../shell/signer-button.tsx';
import { useSession } from '../sync/session.ts';

export function SignedBy() {
  const { person } = useSession();
  if (!person) return <SignerButton />;
  return (
    <Link href="/me" className="signer">
      {person.name}, {person.role}
    </Link>
  );
}

/** On the board: the way to the own page, or to making the first account. */
export function BoardWho() {
  const { person } = useSession();
  return person ? (
    <SignedBy />
  ) : (
    <Link href="/people" className="signer">
      People
    </Link>
  );
}

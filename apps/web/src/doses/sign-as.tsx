/** The button that signs in one's name, and why nothing was signed. */
import { NOBODY_NAMED } from '../sync/signer.ts';

interface SignAsProps {
  readonly verb: 'Sign' | 'Enter';
  readonly by: string;
  /** Null where nothing was refused. */
  readonly refusal: string | null;
}

const REFUSED = { Sign: 'Not signed', Enter: 'Not entered' } as const;

export function SignAs({ verb, by, refusal }: SignAsProps) {
  return (
    <>
      <button type="submit" className="button button-main dose-wide">
        {verb} as {by === NOBODY_NAMED ? '(say who you are)' : by}
      </button>
      {refusal && (
        <p className="field-why dose-wide" role="alert">
          {REFUSED[verb]}: {refusal}
        </p>
      )}
    </>
  );
}

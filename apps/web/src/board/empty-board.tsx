import { useState } from 'react';
import { Link } from 'wouter';
import { Animal } from '../animals/animal.tsx';
import { resetDemonstration } from '../sync/api.ts';

export function EmptyBoard({ isPreparing }: { readonly isPreparing: boolean }) {
  const [why, setWhy] = useState<string | null>(null);
  const bring = () => resetDemonstration().catch((error: Error) => setWhy(error.message));
  return (
    <section className="empty">
      <Animal species="hedgehog" width={140} />
      <p className="lead">No patients yet. A case starts with what animal it is, its mass, and which bone is broken.</p>
      <p className="empty-actions">
        <Link href="/new" className="button button-main">
          Start a case
        </Link>
        {!isPreparing && (
          <button type="button" className="link" onClick={() => void bring()}>
            Bring the demonstration back
          </button>
        )}
      </p>
      {why && <p className="field-why">The demonstration could not be brought back: {why}.</p>}
    </section>
  );
}

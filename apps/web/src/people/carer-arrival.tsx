/** A carer's link, `/carer#TOKEN`: what stands after # is sent to no server by itself. */
import { useEffect, useState } from 'react';
import { tell } from '../sync/api.ts';

export function CarerArrival() {
  const [why, setWhy] = useState<string | null>(null);
  useEffect(() => {
    tell('POST', '/api/session/link', { token: location.hash.slice(1) || 'none' }).then(
      () => location.replace('/'),
      () => setWhy('This link opens nothing any more, or the server does not answer. Ask the practice for a new one.'),
    );
  }, []);
  return (
    <main id="main" tabIndex={-1} className="page narrow people-door">
      <h1>Your patients</h1>
      <p className="lead" role="status">
        {why ?? 'Opening.'}
      </p>
    </main>
  );
}

/** Carers: which patients are theirs, and links that open these and nothing else. */
import { useCallback, useEffect, useState } from 'react';
import { FieldWhy } from '../form/field.tsx';
import { ask, tell } from '../sync/api.ts';
import { useBoard } from '../sync/use-case.ts';
import { moment } from '../words/time.ts';
import { useDoing } from './use-doing.ts';

interface Carer {
  readonly id: string;
  readonly name: string;
  readonly cases: readonly string[];
  readonly links: readonly { readonly id: string; readonly expiresAt: string; readonly takenBackAt: string | null }[];
}

const LINK_DAYS = 14;
const isOnlyHere = /^(localhost|127\.|\[::1\])/.test(location.hostname);

export function CarerLinks() {
  const [carers, setCarers] = useState<readonly Carer[]>([]);
  const [made, setMade] = useState<{ readonly name: string; readonly address: string } | null>(null);
  const { why, run } = useDoing();
  const read = useCallback(() => ask<{ carers: Carer[] }>('/api/links').then((answer) => setCarers(answer.carers)), []);
  useEffect(() => void run(read), [read, run]);
  const make = (carer: Carer) =>
    run(async () => {
      const { token } = await tell<{ token: string }>('POST', '/api/links', { personId: carer.id, days: LINK_DAYS });
      setMade({ name: carer.name, address: `${location.origin}/carer#${token}` });
      await read();
    });
  return (
    <section>
      <h2>Carers</h2>
      {made && (
        <div className="callout callout-good" role="status">
          <strong>A link for {made.name}, now: it is not shown again</strong>
          <p className="people-password">{made.address}</p>
          <p>It opens this carer's patients for {LINK_DAYS} days, to whoever holds it.</p>
          {isOnlyHere && (
            <p>
              This address is good at this machine only. Open the page by the address of the practice's network first.
            </p>
          )}
        </div>
      )}
      {why && <FieldWhy why={why} />}
      {carers.length === 0 && <p className="quiet">No account has the role carer yet.</p>}
      <ul className="people-list">
        {carers.map((carer) => (
          <li key={carer.id} className="people-carer">
            <span>
              <b>{carer.name}</b>
              {carer.links
                .filter(({ takenBackAt }) => takenBackAt === null)
                .map((link) => (
                  <span key={link.id} className="caption people-device">
                    a link until {moment(link.expiresAt)}{' '}
                    <button
                      type="button"
                      className="link"
                      onClick={() => void run(() => tell('DELETE', `/api/links/${link.id}`).then(read))}
                    >
                      take it back
                    </button>
                  </span>
                ))}
            </span>
            <Patients carer={carer} onChange={read} />
            <span className="people-actions">
              <button type="button" className="button-small" onClick={() => void make(carer)}>
                Make a link<span className="sr-only"> for {carer.name}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Patients({ carer, onChange }: { readonly carer: Carer; readonly onChange: () => Promise<void> }) {
  const { board } = useBoard();
  const [cases, setCases] = useState(carer.cases);
  const { why, run } = useDoing();
  const give = (caseId: string, isTheirs: boolean) => {
    const next = isTheirs ? [...cases, caseId] : cases.filter((id) => id !== caseId);
    setCases(next);
    void run(() => tell('PUT', `/api/carers/${carer.id}/patients`, { cases: next }).then(onChange)).then(
      (isGiven) => isGiven || setCases(carer.cases),
    );
  };
  return (
    <fieldset className="field people-patients">
      <legend>Patients of {carer.name}</legend>
      {(board?.cases ?? []).map(({ caseId, number, species }) => (
        <label key={caseId}>
          <input
            type="checkbox"
            checked={cases.includes(caseId)}
            onChange={(event) => give(caseId, event.target.checked)}
          />
          {number} {species}
        </label>
      ))}
      {why && <FieldWhy why={why} />}
    </fieldset>
  );
}

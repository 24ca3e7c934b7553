/** The carer's own patients, one large line each. */
import { useEffect } from 'react';
import { Link } from 'wouter';
import { Animal } from '../animals/animal.tsx';
import { useTitle } from '../shell/use-title.ts';
import { refreshBoard } from '../sync/records.ts';
import { useBoard } from '../sync/use-case.ts';
import { capital } from '../words/patient.ts';

export function CarerPatients() {
  const { board, trouble } = useBoard();
  useTitle('Your patients');
  useEffect(() => void refreshBoard(), []);
  const cases = board?.cases ?? [];
  return (
    <main id="main" tabIndex={-1} className="page carer">
      <h1>Your patients</h1>
      {trouble !== null && <p className="carer-note">This list may be old: {trouble}</p>}
      {board !== null && cases.length === 0 && <p>No patient is yours yet. Ask the practice.</p>}
      <ul className="carer-patients">
        {cases.map(({ caseId, species, number, name, side, bone }) => (
          <li key={caseId}>
            <Link href={`/case/${caseId}`}>
              <Animal species={species} width={64} />
              <span>
                <b>{`${capital(species)} ${number}`}</b>
                {[name, `${side} ${bone}`].filter(Boolean).join(', ')}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </main>
  );
}

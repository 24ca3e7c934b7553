/** Films that came straight from the X-ray machine: matched to this patient by hand, or set aside with a reason. */
import { useState } from 'react';
import { FieldWhy } from '../../form/field.tsx';
import { ReasonDialog } from '../../form/reason-dialog.tsx';
import { matchReceived, type ReceivedFilm, setAsideReceived } from '../../sync/api.ts';
import { fileBytes } from '../../sync/files.ts';
import { useInbox } from '../../sync/inbox.ts';
import type { Intake } from '../intake/use-intake.ts';
import { nameOfReceived, receivedWords } from './received-words.ts';

interface ReceivedFilmsProps {
  readonly caseId: string;
  /** The case lacks a view: the list stands open. */
  readonly isWanting: boolean;
  readonly intake: Intake;
}

const REASONS = ['of another patient', 'a trial exposure', 'sent twice', 'cannot be read'];

export function ReceivedFilms({ caseId, isWanting, intake }: ReceivedFilmsProps) {
  const { films, receiving } = useInbox();
  const [busy, setBusy] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [asking, ask] = useState<ReceivedFilm | null>(null);
  if (films.length === 0) return receiving ? <Listening {...receiving} /> : null;

  const settle = async (film: ReceivedFilm, job: () => Promise<void>) => {
    setBusy(film.sha256);
    setTrouble(null);
    try {
      await job();
    } catch (error) {
      setTrouble(`${receivedWords(film).who}: ${error instanceof Error ? error.message : String(error)}`);
    }
    setBusy(null);
  };
  const match = (film: ReceivedFilm) =>
    settle(film, async () => {
      const isIn = await intake.takeReceived(nameOfReceived(film), film.sha256, async () =>
        Uint8Array.from(await fileBytes(film.sha256)),
      );
      if (isIn) await matchReceived(film.sha256, caseId);
    });
  return (
    <details className="received" open={isWanting}>
      <summary>
        <h2>From the X-ray machine</h2>
        <span className="quiet">
          {films.length === 1 ? '1 film waits' : `${films.length} films wait`} for a patient
        </span>
      </summary>
      <p className="caption">What stands here is what each file says of itself: go by the film.</p>
      <ul>
        {films.map((film) => {
          const { who, what, when, from } = receivedWords(film);
          return (
            <li key={film.sha256} aria-label={`${who}, ${what}`}>
              <span className="received-who">{who}</span>
              <span>{what}</span>
              <span className="quiet">{when}</span>
              <span className="quiet">{from}</span>
              <span className="received-acts">
                <button type="button" className="button" disabled={busy !== null} onClick={() => void match(film)}>
                  {busy === film.sha256 ? 'Is taken in' : 'Of this patient'}
                </button>
                <button type="button" className="button" disabled={busy !== null} onClick={() => ask(film)}>
                  Set aside
                </button>
              </span>
            </li>
          );
        })}
      </ul>
      {trouble && <FieldWhy why={trouble} />}
      {asking && (
        <ReasonDialog
          title="Set this film aside"
          common={REASONS}
          actions={[
            { word: 'Set it aside', act: (why) => void settle(asking, () => setAsideReceived(asking.sha256, why)) },
          ]}
          onClose={() => ask(null)}
        >
          <p className="quiet">It leaves the list; its file is kept. Sent again by the machine, it waits again.</p>
        </ReasonDialog>
      )}
    </details>
  );
}

function Listening({
  address,
  port,
  title,
}: {
  readonly address: string;
  readonly port: number;
  readonly title: string;
}) {
  return (
    <p className="caption received-listening">
      Films sent to {title} at {address}, port {port}, appear here.
    </p>
  );
}

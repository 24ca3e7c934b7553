/** The log: who signed in, who was refused, what was changed about people, who opened what. */
import { useEffect, useState } from 'react';
import { FieldWhy } from '../form/field.tsx';
import { ask } from '../sync/api.ts';
import { moment } from '../words/time.ts';
import { useDoing } from './use-doing.ts';

interface Entry {
  readonly id: string;
  readonly at: string;
  readonly who: string;
  readonly what: string;
  readonly about: string;
  readonly address: string;
}

export function LogList() {
  const [entries, setEntries] = useState<readonly Entry[]>([]);
  const [hasMore, setMore] = useState(true);
  const { why, isDoing, run } = useDoing();
  const read = (before: string | undefined) =>
    run(async () => {
      const query = before ? `?before=${encodeURIComponent(before)}` : '';
      const older = (await ask<{ entries: Entry[] }>(`/api/log${query}`)).entries;
      setEntries((shown) => (before ? [...shown, ...older] : older));
      setMore(older.length > 0);
    });
  // biome-ignore lint/correctness/useExhaustiveDependencies: read once, when the page opens
  useEffect(() => void read(undefined), []);
  return (
    <section>
      <h2>Log</h2>
      {why && <FieldWhy why={why} />}
      <ul className="people-log">
        {entries.map(({ id, at, who, what, about, address }) => (
          <li key={id}>
            <span className="caption">{moment(at)}</span>
            <span>
              {who}: {what}
              {about && `, ${about}`}
            </span>
            <span className="caption">{address}</span>
          </li>
        ))}
      </ul>
      {hasMore && entries.length > 0 && (
        <button type="button" className="button" disabled={isDoing} onClick={() => void read(entries.at(-1)?.id)}>
          Older
        </button>
      )}
    </section>
  );
}

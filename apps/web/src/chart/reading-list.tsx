/** The readings as a table; a wrong one is taken back, with a reason. */
import { type ChartSitting, mayRecord } from '@bonewright/casebook';
import { LANES } from '@bonewright/ward';
import { useState } from 'react';
import { ReasonDialog } from '../form/reason-dialog.tsx';
import type { Append } from '../sync/new-event.ts';
import { useRole } from '../sync/session.ts';
import { hourOf } from '../words/time.ts';

interface ReadingListProps {
  readonly sitting: ChartSitting | null;
  readonly append: Append;
}

export function ReadingList({ sitting, append }: ReadingListProps) {
  const mayTakeBack = mayRecord(useRole(), 'reading-taken-back');
  const [wrong, setWrong] = useState<string | null>(null);
  if (!sitting || sitting.readings.length === 0) return null;
  const takeBack = (why: string) => {
    if (wrong !== null) append([{ kind: 'reading-taken-back', payload: { readingId: wrong }, why }]);
    setWrong(null);
  };
  return (
    <details className="chart-table">
      <summary>Readings in figures: {sitting.readings.length}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table scrolls, by keyboard too */}
      <section className="chart-scroll" aria-label="Readings in figures" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">At</th>
              {LANES.map(({ key, word, unit }) => (
                <th key={key} scope="col">
                  {word} <span>{unit}</span>
                </th>
              ))}
              <td />
            </tr>
          </thead>
          <tbody>
            {sitting.readings.toReversed().map((reading) => (
              <tr key={reading.readingId}>
                <th scope="row">{hourOf(reading.at)}</th>
                {LANES.map(({ key, decimals }) => (
                  <td key={key}>{reading[key]?.toFixed(decimals) ?? 'not read'}</td>
                ))}
                <td>
                  {mayTakeBack && (
                    <button
                      type="button"
                      className="button-small"
                      aria-label={`Take the reading of ${hourOf(reading.at)} back`}
                      onClick={() => setWrong(reading.readingId)}
                    >
                      Take back
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {wrong !== null && (
        <ReasonDialog
          title="Take the reading back"
          common={['pressed by mistake', 'probe had slipped']}
          actions={[{ word: 'Take it back', act: takeBack }]}
          onClose={() => setWrong(null)}
        />
      )}
    </details>
  );
}

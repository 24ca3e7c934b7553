/** Minutes since the last reading, large. It asks; it does not ring or flash. */
import type { ChartSitting } from '@bonewright/casebook';
import { value } from '@bonewright/evidence';
import { VerdictWord } from '../drawing/verdict-mark.tsx';
import { minutesSince } from '../theatre/use-now.ts';

interface SinceLastProps {
  readonly sitting: ChartSitting | null;
  readonly now: number;
}

export function SinceLast({ sitting, now }: SinceLastProps) {
  const every = value('chart.interval.usual');
  const last = sitting?.readings.at(-1);
  const minutes = last ? minutesSince(last.at, now) : null;
  return (
    <div className="chart-since">
      <p className="theatre-figure">
        {minutes ?? '–'} <span className="theatre-unit">min</span>
        {minutes !== null && minutes >= every && <VerdictWord verdict="watch" word="read again" />}
      </p>
      <p className="chart-asks">
        {minutes === null ? 'Nothing read yet. ' : 'since the last reading. '}
        {`Asked every ${every} min, as two studies of squirrels did; one of foxes read every ${value('chart.interval.fox')}.`}
      </p>
    </div>
  );
}

/** For the row of buttons: how long ago it was read; nothing while no chart runs. */
export function chartButtonWords(sitting: ChartSitting | null, now: number): string {
  const last = sitting?.readings.at(-1);
  return last ? `Chart, ${minutesSince(last.at, now)} min` : 'Chart';
}

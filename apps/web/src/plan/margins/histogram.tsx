/** Every trial of a margin as a histogram on the axis of its bar: where it fails, where it is watched, p05, p50, p95. */
import type { Margin, Verdict } from '@bonewright/construct';
import { AXIS_MARKS, onAxis } from './axis.ts';
import { binsOf } from './bins.ts';
import { FAILS, WATCH } from './verdict.ts';

const HEIGHT = 150;
const HEAD = 22;
const COLOUR: Readonly<Record<Verdict, string>> = { good: 'var(--moss)', watch: 'var(--ochre)', stop: 'var(--brick)' };

const percent = (margin: number) => `${onAxis(margin).toFixed(3)}%`;

interface HistogramProps {
  readonly trials: readonly number[] | null;
  readonly margin: Margin;
}

export function Histogram({ trials, margin }: HistogramProps) {
  return (
    <figure className="histogram">
      <svg width="100%" height={HEIGHT} role="img" aria-label={trials ? countWords(trials) : 'The trials are coming'}>
        <rect x="0" y="0" width={percent(FAILS)} height={HEIGHT} fill="url(#hatch-fails)" />
        <rect
          x={percent(FAILS)}
          y="0"
          width={`${onAxis(WATCH) - onAxis(FAILS)}%`}
          height={HEIGHT}
          fill="url(#dots-watch)"
        />
        {AXIS_MARKS.map(({ at, kind }) => (
          <line
            key={at}
            x1={percent(at)}
            x2={percent(at)}
            y1={kind === 'plain' ? HEIGHT - 5 : 0}
            y2={HEIGHT}
            className={`axis-line axis-${kind}`}
          />
        ))}
        {trials && <Bars trials={trials} />}
        <Percentiles margin={margin} />
        <line x1="0" x2="100%" y1={HEIGHT - 0.5} y2={HEIGHT - 0.5} stroke="var(--ink)" />
      </svg>
      <figcaption className="quiet">{trials ? countWords(trials) : 'Counting the trials'}</figcaption>
    </figure>
  );
}

function Bars({ trials }: { readonly trials: readonly number[] }) {
  const bins = binsOf(trials);
  const most = Math.max(1, ...bins.map(({ count }) => count));
  return bins
    .filter(({ count }) => count > 0)
    .map(({ from, to, count }) => {
      const height = ((HEIGHT - HEAD) * count) / most;
      const verdict = to <= onAxis(FAILS) + TINY ? 'stop' : to <= onAxis(WATCH) + TINY ? 'watch' : 'good';
      return (
        <rect
          key={from}
          x={`${from}%`}
          y={HEIGHT - height}
          width={`${(to - from) * BAR_SHARE}%`}
          height={height}
          fill={COLOUR[verdict]}
        />
      );
    });
}

const TINY = 1e-9;
const BAR_SHARE = 0.86;

/** The three figures of the bar below, drawn up through the trials. */
function Percentiles({ margin: { p05, p50, p95 } }: { readonly margin: Margin }) {
  const marks = [
    [p05, 'p05'],
    [p50, 'p50'],
    [p95, 'p95'],
  ] as const;
  return marks.map(([value, word]) => (
    <g key={word}>
      <line x1={percent(value)} x2={percent(value)} y1={HEAD - 6} y2={HEIGHT} className={`mark-${word}`} />
      <text x={percent(value)} y={HEAD - 9} textAnchor="middle" className="mark-word">
        {word}
      </text>
    </g>
  ));
}

function countWords(trials: readonly number[]): string {
  const failed = trials.filter((trial) => trial < FAILS).length;
  const watched = trials.filter((trial) => trial >= FAILS && trial < WATCH).length;
  const rest = trials.length - failed - watched;
  return `Of ${trials.length} trials ${failed} fail, ${watched} keep less than ${WATCH}, ${rest} keep more.`;
}

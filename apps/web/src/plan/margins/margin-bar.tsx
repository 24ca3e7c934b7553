/** One margin as a bar with its spread: p05, the end that decides, stands proud; p50 is a notch. */
import type { Margin, Verdict } from '@bonewright/construct';
import { AXIS_MARKS, isOffAxis, onAxis } from './axis.ts';
import { FAILS, WATCH } from './verdict.ts';

const WASH: Readonly<Record<Verdict, string>> = { good: 'var(--mossw)', watch: 'var(--ochrew)', stop: 'var(--brickw)' };
const LINE: Readonly<Record<Verdict, string>> = { good: 'var(--moss)', watch: 'var(--ochre)', stop: 'var(--brick)' };
const SMALL = { height: 22, bar: 11 };
const TALL = { height: 44, bar: 24 };
/** How far the end that decides stands proud of the bar. */
const PROUD = 4;

const percent = (margin: number) => `${onAxis(margin).toFixed(3)}%`;

interface MarginBarProps {
  readonly margin: Margin;
  readonly verdict: Verdict;
  readonly says: string;
  readonly isTall?: boolean;
}

export function MarginBar({ margin: { p05, p50, p95 }, verdict, says, isTall = false }: MarginBarProps) {
  const { height, bar } = isTall ? TALL : SMALL;
  const top = (height - bar) / 2;
  const [low, high] = [onAxis(p05), onAxis(p95)];
  return (
    <svg className="margin-bar" width="100%" height={height} role="img" aria-label={says}>
      <rect x="0" y="2" width={percent(FAILS)} height={height - 4} fill="url(#hatch-fails)" />
      <rect
        x={percent(FAILS)}
        y="2"
        width={`${onAxis(WATCH) - onAxis(FAILS)}%`}
        height={height - 4}
        fill="url(#dots-watch)"
      />
      {AXIS_MARKS.map(({ at, kind }) => (
        <line key={at} x1={percent(at)} x2={percent(at)} y1="0" y2={height} className={`axis-line axis-${kind}`} />
      ))}
      <rect
        className="bar-move"
        x={`${low}%`}
        width={`${Math.max(0.8, high - low)}%`}
        y={top}
        height={bar}
        fill={WASH[verdict]}
        stroke={LINE[verdict]}
        strokeWidth="1.25"
      />
      <rect className="bar-move" x={percent(p50)} width="2" y={top} height={bar} fill="var(--ink)" />
      <rect
        className="bar-move"
        x={`${low}%`}
        width="4"
        y={top - PROUD}
        height={bar + 2 * PROUD}
        fill={LINE[verdict]}
      />
      {isOffAxis(p05) && <OffAxis isLow={p05 < FAILS} middle={height / 2} colour={LINE[verdict]} />}
      {isOffAxis(p95) && p95 > WATCH && <OffAxis isLow={false} middle={height / 2} colour={LINE[verdict]} />}
    </svg>
  );
}

/** Past the end of the axis: an arrowhead; the figure stands beside the bar. */
interface OffAxisProps {
  readonly isLow: boolean;
  readonly middle: number;
  readonly colour: string;
}

function OffAxis({ isLow, middle, colour }: OffAxisProps) {
  return (
    <svg x={isLow ? '0' : '100%'} overflow="visible" aria-hidden="true">
      <path d={isLow ? `M-1 ${middle}l10 -7v14z` : `M1 ${middle}l-10 -7v14z`} fill={colour} />
    </svg>
  );
}

export function MarginAxis() {
  return (
    <div className="margin-axis" aria-hidden="true">
      {AXIS_MARKS.map(({ at, word, kind }) => (
        <span key={at} className={`axis-word axis-word-${kind}`} style={{ left: percent(at) }}>
          {word}
        </span>
      ))}
    </div>
  );
}

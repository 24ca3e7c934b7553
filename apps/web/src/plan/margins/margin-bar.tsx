/** One margin as a bar with its spread: p05, the end that decides, stands proud; p50 is a notch. */
import type { Margin, Verdict } from '@bonewright/construct';
import { AXIS_MARKS, isOffAxis, onAxis } from './axis.ts';
import { FAILS, WATCH } from './verdict.ts';

const WASH: Readonly<Record<Verdict, string>> = { good: 'var(--mossw)', watch: 'var(--ochrew)', stop: 'var(--brickw)' };
const LINE: Readonly<Record<Verdict, string>> = { good: 'var(--moss)', watch: 'var(--ochre)', stop: 'var(--brick)' };
const HEIGHT = 22;
const BAR_TOP = 6;
const BAR = 11;
const END_STOP = BAR + 4 + 4;

const percent = (margin: number) => `${onAxis(margin).toFixed(3)}%`;

interface MarginBarProps {
  readonly margin: Margin;
  readonly verdict: Verdict;
  readonly says: string;
}

export function MarginBar({ margin: { p05, p50, p95 }, verdict, says }: MarginBarProps) {
  const [low, high] = [onAxis(p05), onAxis(p95)];
  return (
    <svg className="margin-bar" width="100%" height={HEIGHT} role="img" aria-label={says}>
      <rect x="0" y="2" width={percent(FAILS)} height={HEIGHT - 4} fill="url(#hatch-fails)" />
      <rect
        x={percent(FAILS)}
        y="2"
        width={`${onAxis(WATCH) - onAxis(FAILS)}%`}
        height={HEIGHT - 4}
        fill="url(#dots-watch)"
      />
      {AXIS_MARKS.map(({ at, kind }) => (
        <line key={at} x1={percent(at)} x2={percent(at)} y1="0" y2={HEIGHT} className={`axis-line axis-${kind}`} />
      ))}
      <rect
        className="bar-move"
        x={`${low}%`}
        width={`${Math.max(0.8, high - low)}%`}
        y={BAR_TOP}
        height={BAR}
        fill={WASH[verdict]}
        stroke={LINE[verdict]}
        strokeWidth="1.25"
      />
      <rect className="bar-move" x={percent(p50)} width="2" y={BAR_TOP} height={BAR} fill="var(--ink)" />
      <rect className="bar-move" x={`${low}%`} width="4" y={BAR_TOP - 4} height={END_STOP} fill={LINE[verdict]} />
      {isOffAxis(p05) && <OffAxis isLow={p05 < FAILS} colour={LINE[verdict]} />}
      {isOffAxis(p95) && p95 > WATCH && <OffAxis isLow={false} colour={LINE[verdict]} />}
    </svg>
  );
}

/** Past the end of the axis: an arrowhead; the figure stands beside the bar. */
function OffAxis({ isLow, colour }: { readonly isLow: boolean; readonly colour: string }) {
  return (
    <svg x={isLow ? '0' : '100%'} overflow="visible" aria-hidden="true">
      <path d={isLow ? 'M-1 11l10 -7v14z' : 'M1 11l-10 -7v14z'} fill={colour} />
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

/** One line of the chart: its usual range behind it, a dot a reading, the last figure large at the right. */
import type { Reading } from '@bonewright/casebook';
import { type Lane, laneSpan, usualOf } from '@bonewright/ward';

interface LaneStripProps {
  readonly lane: Lane;
  readonly species: string;
  readonly readings: readonly Reading[];
  readonly left: number;
  readonly right: number;
  readonly width: number;
  readonly top: number;
  readonly height: number;
  /** From minutes since 1970. */
  readonly x: (minutes: number) => number;
}

const PAD = 6;
const MINUTE_MS = 60_000;

export function LaneStrip({ lane, species, readings, left, right, width, top, height, x }: LaneStripProps) {
  const read = readings.flatMap(({ at, [lane.key]: value }) => (value === null ? [] : [{ at, value }]));
  const usual = usualOf(species, lane.key);
  const [low, high] = laneSpan(
    read.map(({ value }) => value),
    usual,
    lane.step,
  );
  const y = (value: number) => top + height - PAD - ((value - low) / (high - low)) * (height - 2 * PAD);
  const points = read.map(({ at, value }) => [x(Date.parse(at) / MINUTE_MS), y(value)] as const);
  const last = read.at(-1);
  return (
    <g>
      <line className="chart-rule" x1={0} x2={width} y1={top} y2={top} />
      {usual.map(({ entry, isWeak }) => (
        <rect
          key={entry.id}
          className={isWeak ? 'chart-usual chart-usual-weak' : 'chart-usual'}
          x={left}
          width={right - left}
          y={y(entry.high)}
          height={Math.max(1, y(entry.low) - y(entry.high))}
        />
      ))}
      <text className="chart-word" x={0} y={top + 26}>
        {lane.word}
      </text>
      <text x={0} y={top + 46}>
        {lane.unit}
      </text>
      <polyline className="chart-line" points={points.map((point) => point.join(',')).join(' ')} />
      {points.map(([px, py]) => (
        <circle key={px} className="chart-dot" cx={px} cy={py} r={4} />
      ))}
      {[high, low].map((value, i) => (
        <text
          key={value}
          className="chart-scale"
          x={right - 2}
          y={i === 0 ? top + 15 : top + height - 4}
          textAnchor="end"
        >
          {value.toFixed(lane.decimals)}
        </text>
      ))}
      {last && (
        <text className="chart-last" x={width} y={top + height / 2 + 12} textAnchor="end">
          {last.value.toFixed(lane.decimals)}
        </text>
      )}
    </g>
  );
}

/** Every line of the chart on one time axis, each in a strip of its own, so that no symbol has to be known. */
import type { ChartSitting } from '@bonewright/casebook';
import { LANES, timeAxis } from '@bonewright/ward';
import { useSize } from '../drawing/use-size.ts';
import { hourOf } from '../words/time.ts';
import { LaneStrip } from './lane-strip.tsx';

interface ChartDrawingProps {
  readonly sitting: ChartSitting | null;
  readonly species: string;
  /** The moment up to which it is drawn; null for one that is over. */
  readonly now: number | null;
}

const HEAD = 40;
const STRIP = 66;
const FOOT = 30;
const MINUTE_MS = 60_000;
const NARROW = 460;

export function ChartDrawing({ sitting, species, now }: ChartDrawingProps) {
  const [box, { width }] = useSize<HTMLDivElement>();
  const lanes = LANES.filter(({ key }) => sitting?.readings.some((reading) => reading[key] !== null));
  return (
    <div ref={box} className="chart-lines">
      {!sitting || lanes.length === 0 ? (
        <p className="theatre-note">The lines stand here with the first reading.</p>
      ) : (
        width > 0 && <Strips {...{ sitting, species, now, width, lanes }} />
      )}
      {sitting && sitting.entries.length > 0 && (
        <ol className="chart-events" aria-label="What happened">
          {sitting.entries.map(({ at, words }, i) => (
            <li key={`${at}-${words}`}>
              <b>{i + 1}</b> {hourOf(at)} {words}
            </li>
          ))}
        </ol>
      )}
    </div>
  );
}

interface StripsProps extends Omit<ChartDrawingProps, 'sitting'> {
  readonly sitting: ChartSitting;
  readonly width: number;
  readonly lanes: typeof LANES;
}

function Strips({ sitting, species, now, width, lanes }: StripsProps) {
  const left = width < NARROW ? 74 : 112;
  const right = width - (width < NARROW ? 62 : 86);
  const axis = timeAxis(sitting.from, now === null ? sitting.to : new Date(now).toISOString());
  const x = (minutes: number) => left + ((minutes - axis.from) / (axis.to - axis.from)) * (right - left);
  const foot = HEAD + lanes.length * STRIP;
  return (
    <svg width={width} height={foot + FOOT} role="img" aria-label={spoken(sitting)}>
      {axis.ticks.map((tick) => (
        <g key={tick}>
          <line className="chart-tick" x1={x(tick)} x2={x(tick)} y1={HEAD} y2={foot} />
          <text x={x(tick)} y={foot + 22} textAnchor="middle">
            {hourOf(new Date(tick * MINUTE_MS).toISOString())}
          </text>
        </g>
      ))}
      {sitting.entries.map(({ at, words }, i) => {
        const place = x(Date.parse(at) / MINUTE_MS);
        const level = 12 + (i % 2) * 14;
        return (
          <g key={`${at}-${words}`}>
            <line className="chart-mark" x1={place} x2={place} y1={level + 4} y2={foot} />
            <text className="chart-mark-number" x={place} y={level} textAnchor="middle">
              {i + 1}
            </text>
          </g>
        );
      })}
      {lanes.map((lane, i) => (
        <LaneStrip
          key={lane.key}
          {...{ lane, species, left, right, width, x }}
          top={HEAD + i * STRIP}
          height={STRIP}
          readings={sitting.readings}
        />
      ))}
    </svg>
  );
}

function spoken({ readings }: ChartSitting): string {
  const last = readings.at(-1);
  if (!last) return 'No reading yet';
  const said = LANES.flatMap(({ key, word, unit }) => (last[key] === null ? [] : [`${word} ${last[key]} ${unit}`]));
  return `${readings.length} readings; the last at ${hourOf(last.at)}: ${said.join(', ')}`;
}

/** What was found on the film: walls with a tick at every other station, the axes, the ball. In film pixels. */
import type { Pixel, Trace, TracedSegment, TraceStation } from '@bonewright/film';
import { Haloed, lineThrough } from '../../plan/films/halo.tsx';
import { runsOf } from './runs.ts';

interface FoundProps {
  readonly trace: Trace;
  /** Film pixels that make one pixel of the screen. */
  readonly unit: number;
}

export function Found({ trace, unit }: FoundProps) {
  return (
    <g>
      {trace.segments.map((segment) => (
        <SegmentFound key={segment.name} segment={segment} unit={unit} mmPerPixel={trace.mmPerPixel.value} />
      ))}
      {trace.ball && <BallFound ball={trace.ball} unit={unit} />}
    </g>
  );
}

interface SegmentProps {
  readonly segment: TracedSegment;
  readonly unit: number;
  readonly mmPerPixel: number | null;
}

const WALLS = [
  ['outer', 0],
  ['outer', 1],
  ['canal', 0],
  ['canal', 1],
] as const;

function SegmentFound({ segment, unit, mmPerPixel }: SegmentProps) {
  const { stations, axis } = segment;
  return (
    <g>
      <Haloed
        d={lineThrough([axis.from, axis.to])}
        colour="var(--chalk)"
        widthPx={unit}
        unit={unit}
        dash={[9, 3, 2, 3].map((n) => n * unit).join(' ')}
      />
      {WALLS.map(([wall, side]) =>
        runsOf(stations, wall).map(({ isSure, points }, i) => (
          <Haloed
            key={`${wall}${side}${i}`}
            d={lineThrough(points.map((pair) => pair[side]))}
            colour="var(--mint)"
            widthPx={(wall === 'outer' ? 1.5 : 1) * unit}
            unit={unit}
            {...(isSure ? {} : { dash: `${3 * unit} ${3 * unit}` })}
          />
        )),
      )}
      {mmPerPixel !== null && <Ticks stations={stations} unit={unit} awayPx={AWAY_MM / mmPerPixel} />}
    </g>
  );
}

/** Ticks stand off the bone, so that nothing covers a wall it describes. */
const AWAY_MM = 0.35;
const TICK_PX = 8;
const TICK_EVERY_MM = 2;

function Ticks({
  stations,
  unit,
  awayPx,
}: {
  readonly stations: readonly TraceStation[];
  readonly unit: number;
  readonly awayPx: number;
}) {
  let last = Number.NEGATIVE_INFINITY;
  const ticks: string[] = [];
  for (const { sMm, walls } of stations) {
    if (!walls.outer || sMm - last < TICK_EVERY_MM) continue;
    last = sMm;
    const [left, right] = walls.outer;
    ticks.push(tick(right, left, awayPx, TICK_PX * unit), tick(left, right, awayPx, TICK_PX * unit));
  }
  return <Haloed d={ticks.join('')} colour="var(--mint)" widthPx={unit} unit={unit} />;
}

/** From beyond `at`, away from `other`. */
function tick(other: Pixel, at: Pixel, away: number, length: number): string {
  const way = [at[0] - other[0], at[1] - other[1]] as const;
  const size = Math.hypot(...way) || 1;
  const out = (by: number): Pixel => [at[0] + (way[0] / size) * by, at[1] + (way[1] / size) * by];
  return lineThrough([out(away), out(away + length)]);
}

function BallFound({ ball, unit }: { readonly ball: NonNullable<Trace['ball']>; readonly unit: number }) {
  const { centre, shortAxisPx, longAxisPx, angleDeg } = ball;
  const place = `translate(${centre[0]} ${centre[1]}) rotate(${angleDeg})`;
  const radii = { rx: longAxisPx / 2, ry: shortAxisPx / 2 };
  return (
    <g transform={place} fill="none">
      <ellipse {...radii} stroke="var(--surround)" strokeOpacity="0.62" strokeWidth={3.3 * unit} />
      <ellipse {...radii} stroke="var(--mint)" strokeWidth={1.5 * unit} />
    </g>
  );
}

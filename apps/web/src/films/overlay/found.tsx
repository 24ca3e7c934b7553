/** What was found on the film: walls with a tick at every other station, the axes, the ball. In film pixels. */
import type { Pixel, Trace, TracedSegment, TraceStation } from '@bonewright/film';
import { lineThrough } from '../../plan/films/halo.tsx';
import { type FilmLine, HaloedLines } from './haloed-lines.tsx';
import { runsOf } from './runs.ts';

interface FoundProps {
  readonly trace: Trace;
  /** Film pixels that make one pixel of the screen. */
  readonly unit: number;
}

export function Found({ trace, unit }: FoundProps) {
  const { segments, mmPerPixel, ball } = trace;
  const awayPx = mmPerPixel.value === null ? null : AWAY_MM / mmPerPixel.value;
  return (
    <g>
      <HaloedLines unit={unit} lines={segments.flatMap((segment) => linesOf(segment, awayPx, unit))} />
      {ball && <BallFound ball={ball} unit={unit} />}
    </g>
  );
}

const WALLS = [
  ['outer', 0, 1.5],
  ['outer', 1, 1.5],
  ['canal', 0, 1],
  ['canal', 1, 1],
] as const;
const AXIS_DASH = [9, 3, 2, 3];
const UNSURE_DASH = [3, 3];

function linesOf({ axis, stations }: TracedSegment, awayPx: number | null, unit: number): FilmLine[] {
  const walls = WALLS.flatMap(([wall, side, widthPx]) =>
    runsOf(stations, wall).map(({ isSure, points }): FilmLine => {
      const line = { d: lineThrough(points.map((pair) => pair[side])), colour: 'var(--mint)', widthPx };
      return isSure ? line : { ...line, dash: UNSURE_DASH };
    }),
  );
  const ticks = awayPx === null ? '' : ticksOf(stations, awayPx, TICK_PX * unit);
  return [
    { d: lineThrough([axis.from, axis.to]), colour: 'var(--chalk)', widthPx: 1, dash: AXIS_DASH },
    { d: ticks, colour: 'var(--mint)', widthPx: 1 },
    ...walls,
  ];
}

/** Ticks stand off the bone, so that nothing covers a wall it describes. */
const AWAY_MM = 0.35;
const TICK_PX = 8;
const TICK_EVERY_MM = 2;

function ticksOf(stations: readonly TraceStation[], awayPx: number, length: number): string {
  let last = Number.NEGATIVE_INFINITY;
  const ticks: string[] = [];
  for (const { sMm, walls } of stations) {
    if (!walls.outer || sMm - last < TICK_EVERY_MM) continue;
    last = sMm;
    const [left, right] = walls.outer;
    ticks.push(tick(right, left, awayPx, length), tick(left, right, awayPx, length));
  }
  return ticks.join('');
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

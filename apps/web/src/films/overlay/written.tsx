/** Words and lengths on the film: the bend beside the fracture, the ball's size, a bar of 10 mm. */
import type { Measured, Pixel, Trace } from '@bonewright/film';
import { useContext } from 'react';
import { Haloed, lineThrough } from '../../plan/films/halo.tsx';
import { figure } from '../../plan/words.ts';
import { toScreen, uprightAt } from '../plate/turn.ts';
import { PlateTurn } from './plate-turn.ts';

interface WrittenProps {
  readonly trace: Trace;
  readonly unit: number;
  readonly ballMm: number | null;
}

const FIGURE_PX = 20;
const SPREAD_PX = 13;

export function Written({ trace, unit, ballMm }: WrittenProps) {
  return (
    <g>
      {trace.ball && ballMm !== null && <BallSize ball={trace.ball} mm={ballMm} unit={unit} />}
      <Bend trace={trace} unit={unit} />
    </g>
  );
}

function Bend({ trace, unit }: { readonly trace: Trace; readonly unit: number }) {
  const distal = trace.segments[1];
  const { angulationDeg } = trace;
  if (!distal || angulationDeg.value === null) return null;
  const middle: Pixel = [(distal.axis.from[0] + distal.axis.to[0]) / 2, (distal.axis.from[1] + distal.axis.to[1]) / 2];
  const outer = distal.stations.flatMap(({ walls }) => walls.outer ?? []).map(([x]) => x);
  const isLeft = ballIsBeside(trace, middle, unit);
  const edge = isLeft ? Math.min(middle[0], ...outer) : Math.max(middle[0], ...outer);
  return (
    <Figure
      at={[edge + (isLeft ? -1 : 1) * BESIDE_PX * unit, middle[1]]}
      outwards={[isLeft ? -1 : 1, 0]}
      value={`${figure(Math.abs(angulationDeg.value))}°`}
      spread={spread(angulationDeg)}
      unit={unit}
    />
  );
}

const BESIDE_PX = 30;
const ROOM_PX = 60;

/** The ball lies where the figure would stand at the right. */
function ballIsBeside({ ball }: Trace, [x, y]: Pixel, unit: number): boolean {
  if (!ball || ball.centre[0] < x) return false;
  return Math.abs(ball.centre[1] - y) < ball.longAxisPx / 2 + ROOM_PX * unit;
}

const spread = ({ sd }: Measured): string => (sd === null ? '' : `± ${figure(sd)}`);

interface FigureProps {
  readonly at: Pixel;
  /** On the film: the way from what it says something of. */
  readonly outwards: Pixel;
  readonly value: string;
  readonly spread: string;
  readonly unit: number;
}

function Figure({ at, outwards, value, spread, unit }: FigureProps) {
  const turn = useContext(PlateTurn);
  const [x, y] = at;
  const across = Math.round(toScreen(turn, outwards)[0]);
  const anchor = across === 0 ? 'middle' : across > 0 ? 'start' : 'end';
  return (
    <g transform={uprightAt(turn, at)} fill="var(--chalk)" strokeWidth={3.5 * unit} textAnchor={anchor}>
      <text x={x} y={y} fontSize={FIGURE_PX * unit} className="film-figure">
        {value}
      </text>
      <text x={x} y={y + 17 * unit} fontSize={SPREAD_PX * unit} className="film-figure film-figure-small">
        {spread}
      </text>
    </g>
  );
}

interface BallSizeProps {
  readonly ball: NonNullable<Trace['ball']>;
  readonly mm: number;
  readonly unit: number;
}

function BallSize({ ball, mm, unit }: BallSizeProps) {
  const turn = useContext(PlateTurn);
  const [x, y] = ball.centre;
  const half = ball.shortAxisPx / 2;
  const line = y + half + 11 * unit;
  const ends = [x - half, x + half].map((end) =>
    lineThrough([
      [end, line - 5 * unit],
      [end, line + 5 * unit],
    ]),
  );
  return (
    <g transform={uprightAt(turn, ball.centre)}>
      <Haloed
        d={
          lineThrough([
            [x - half, line],
            [x + half, line],
          ]) + ends.join('')
        }
        colour="var(--chalk)"
        widthPx={unit}
        unit={unit}
      />
      <text
        x={x}
        y={line + 20 * unit}
        textAnchor="middle"
        fontSize={SPREAD_PX * unit}
        fill="var(--chalk)"
        strokeWidth={3.5 * unit}
        className="film-figure"
      >
        {`${figure(mm, 2)} mm`}
      </text>
    </g>
  );
}

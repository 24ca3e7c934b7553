/** The station being corrected: a line across it, and a handle on each wall to be dragged or moved by key. */
import { type Pixel, WALL_SIDES, type WallSide } from '@bonewright/film';
import { useState } from 'react';
import { lineThrough } from '../../plan/films/halo.tsx';
import { tidy } from '../marks/target.ts';
import { HaloedLines } from '../overlay/haloed-lines.tsx';
import { Mark, REACH_PX } from '../overlay/mark.tsx';
import { stationAt } from './corrections.ts';
import type { Correcting } from './use-correcting.ts';

interface StationHandlesProps {
  readonly correcting: Correcting;
  readonly unit: number;
  readonly onSay: (words: string) => void;
}

const WORDS: Readonly<Record<WallSide, string>> = {
  'outer-left': 'outer wall, one side',
  'outer-right': 'outer wall, other side',
  'canal-left': 'canal wall, one side',
  'canal-right': 'canal wall, other side',
};
const COLOUR = 'var(--coral)';

export function StationHandles({ correcting, unit, onSay }: StationHandlesProps) {
  const [held, hold] = useState<{ readonly side: WallSide; readonly at: Pixel } | null>(null);
  const { trace, place, putEdge } = correcting;
  const station = place && stationAt(trace, place);
  if (!station) return null;
  const edges = WALL_SIDES.flatMap((side) => {
    const pair = station.walls[side.startsWith('outer') ? 'outer' : 'canal'];
    const at = held?.side === side ? held.at : pair?.[side.endsWith('left') ? 0 : 1];
    return at ? [{ side, at }] : [];
  });
  const reachPx = reachOf(
    edges.map(({ at }) => at),
    unit,
  );
  const [from = station.centre, to = station.centre] = station.walls.outer ?? [];
  return (
    <g>
      <HaloedLines unit={unit} lines={[{ d: lineThrough([from, to]), colour: COLOUR, widthPx: 1, dash: [3, 3] }]} />
      {edges.length === 0 && (
        <HaloedLines unit={unit} lines={[{ d: crossAt(station.centre, unit), colour: COLOUR, widthPx: 2 }]} />
      )}
      {edges.map(({ side, at }) => (
        <Mark
          key={side}
          at={at}
          word=""
          label={`${WORDS[side]}, station ${station.sMm.toFixed(1)} mm`}
          unit={unit}
          colour={COLOUR}
          balloon={null}
          reachPx={reachPx}
          onHold={(next) => hold({ side, at: next })}
          onKeep={(next) => {
            hold(null);
            putEdge(side, tidy(next));
            onSay(`${WORDS[side]} moved`);
          }}
          onRemove={correcting.undo}
          onTap={() => undefined}
        />
      ))}
    </g>
  );
}

const LEAST_REACH_PX = 3;

/** Half the way to the nearest other handle: a grip never takes the wrong wall. */
function reachOf(places: readonly Pixel[], unit: number): number {
  const gaps = places.flatMap((a, i) => places.slice(i + 1).map((b) => Math.hypot(a[0] - b[0], a[1] - b[1]) / unit));
  return Math.max(LEAST_REACH_PX, Math.min(REACH_PX, ...gaps.map((gap) => gap / 2)));
}

const CROSS_PX = 8;

function crossAt([x, y]: Pixel, unit: number): string {
  const size = CROSS_PX * unit;
  return `M${x - size} ${y - size}l${2 * size} ${2 * size}M${x - size} ${y + size}l${2 * size} ${-2 * size}`;
}

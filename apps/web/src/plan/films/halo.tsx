/** Lines on a film are drawn twice: a dark edge below keeps each colour readable on any grey. */
import type { Pixel } from '@bonewright/film';

const HALO_PX = 1.8;

interface HaloedProps {
  readonly d: string;
  readonly colour: string;
  /** In film pixels. */
  readonly widthPx: number;
  /** Film pixels that make one pixel of the screen. */
  readonly unit: number;
  readonly dash?: string;
}

export function Haloed({ d, colour, widthPx, unit, dash }: HaloedProps) {
  return (
    <g fill="none" strokeLinecap="round" strokeLinejoin="round">
      <path d={d} stroke="var(--surround)" strokeOpacity="0.62" strokeWidth={widthPx + HALO_PX * unit} />
      <path d={d} stroke={colour} strokeWidth={widthPx} strokeDasharray={dash} />
    </g>
  );
}

export const lineThrough = (points: readonly Pixel[]): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`).join('');

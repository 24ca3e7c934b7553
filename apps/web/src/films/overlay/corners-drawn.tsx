import type { Pixel } from '@bonewright/film';
import { lineThrough } from '../../plan/films/halo.tsx';
import { HaloedLines } from './haloed-lines.tsx';

interface CornersDrawnProps {
  readonly placed: readonly Pixel[];
  readonly unit: number;
}

const CROSS_PX = 8;

/** The outline of a film in its photograph, as far as it was clicked. */
export function CornersDrawn({ placed, unit }: CornersDrawnProps) {
  const outline = placed.length === 4 ? `${lineThrough(placed)}Z` : lineThrough(placed);
  const size = CROSS_PX * unit;
  const crosses = placed.map(([x, y]) => `M${x - size} ${y}h${2 * size}M${x} ${y - size}v${2 * size}`).join('');
  return <HaloedLines unit={unit} lines={[{ d: outline + crosses, colour: 'var(--chalk)', widthPx: 1.5 }]} />;
}

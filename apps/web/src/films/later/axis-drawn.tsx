/** The middle lines of both fragments as clicked, and the clicks so far. */
import type { Pixel } from '@bonewright/film';
import { lineThrough } from '../../plan/films/halo.tsx';
import type { FourClicks } from '../marks/working.ts';
import { type FilmLine, HaloedLines } from '../overlay/haloed-lines.tsx';

const DASH = [9, 3, 2, 3];
const DOT_PX = 3;

export function AxisDrawn({ clicks, unit }: { readonly clicks: FourClicks; readonly unit: number }) {
  const [a, b, c, d] = clicks;
  const line = (from: Pixel | null, to: Pixel | null): FilmLine[] =>
    from && to ? [{ d: lineThrough([from, to]), colour: 'var(--chalk)', widthPx: 1.25, dash: DASH }] : [];
  return (
    <g>
      <HaloedLines unit={unit} lines={[...line(a, b), ...line(c, d)]} />
      {clicks.map(
        (at, i) =>
          at && (
            <circle
              key={i}
              cx={at[0]}
              cy={at[1]}
              r={DOT_PX * unit}
              fill="var(--chalk)"
              stroke="var(--surround)"
              strokeWidth={unit}
            />
          ),
      )}
    </g>
  );
}

/** Lines on a film: all dark edges below, then all colours, so that no edge dims the colour of a neighbour. */
export interface FilmLine {
  readonly d: string;
  readonly colour: string;
  readonly widthPx: number;
  readonly dash?: readonly number[];
}

interface HaloedLinesProps {
  readonly lines: readonly FilmLine[];
  /** Film pixels that make one pixel of the screen; widths and dashes are in the latter. */
  readonly unit: number;
}

const HALO_PX = 1.8;

export function HaloedLines({ lines, unit }: HaloedLinesProps) {
  return (
    <g fill="none" strokeLinecap="round" strokeLinejoin="round">
      {lines.map(({ d, widthPx }, i) => (
        <path key={i} d={d} stroke="var(--surround)" strokeOpacity="0.62" strokeWidth={(widthPx + HALO_PX) * unit} />
      ))}
      {lines.map(({ d, colour, widthPx, dash }, i) => (
        <path
          key={i}
          d={d}
          stroke={colour}
          strokeWidth={widthPx * unit}
          strokeLinecap={dash ? 'butt' : 'round'}
          strokeDasharray={dash?.map((px) => px * unit).join(' ')}
        />
      ))}
    </g>
  );
}

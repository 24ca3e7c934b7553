/** A film cut along its fracture, the distal half laid where it belongs, walls as found; dots where a part was before. */
import { memo, type ReactNode, useId } from 'react';
import type { FilmMap } from './film-map.ts';
import { Haloed, lineThrough } from './halo.tsx';

/** A film as a picture the browser can show, with its size in film pixels. */
export interface FilmPicture {
  readonly url: string;
  readonly cols: number;
  readonly rows: number;
}

interface FilmBelowProps {
  readonly map: FilmMap;
  readonly picture: FilmPicture | null;
  /** Without walls and fracture. */
  readonly isBare: boolean;
  readonly viewBox: string;
  /** Film pixels that make one pixel of the screen. */
  readonly unit: number;
  readonly width: number;
  readonly height: number;
}

/** A drawing of its own below the plan: it stays as it is while a pin is dragged. */
export const FilmBelow = memo(({ map, picture, isBare, viewBox, unit, width, height }: FilmBelowProps) => {
  const { fracture } = map;
  const image = picture && (
    <image href={picture.url} x="-0.5" y="-0.5" width={picture.cols} height={picture.rows} preserveAspectRatio="none" />
  );
  return (
    <svg viewBox={viewBox} width={width} height={height} className="film-below" aria-hidden="true">
      <Half corners={fracture ? map.proximalHalf : null}>{image}</Half>
      <g transform={map.reduce}>
        <Half corners={fracture ? map.distalHalf : []}>{image}</Half>
      </g>
      {!isBare && <Found map={map} unit={unit} />}
    </svg>
  );
});

/** Walls as found, where the distal part lay before, and the fracture. */
function Found({ map: { reduce, walls, fracture }, unit }: Pick<FilmBelowProps, 'map' | 'unit'>) {
  return (
    <>
      <Walls lines={walls[0]} unit={unit} />
      <Before lines={walls[1]} unit={unit} />
      <g transform={reduce}>
        <Walls lines={walls[1]} unit={unit} />
      </g>
      {fracture && (
        <Haloed
          d={lineThrough(fracture)}
          colour="var(--coral)"
          widthPx={1.5 * unit}
          unit={unit}
          dash={`${6 * unit} ${4 * unit}`}
        />
      )}
    </>
  );
}

interface HalfProps {
  /** Null: all of it; empty: nothing. */
  readonly corners: FilmMap['proximalHalf'] | null;
  readonly children: ReactNode;
}

function Half({ corners, children }: HalfProps) {
  const id = useId();
  if (corners === null) return children;
  if (corners.length === 0) return null;
  return (
    <>
      <clipPath id={id}>
        <polygon points={corners.join(' ')} />
      </clipPath>
      <g clipPath={`url(#${id})`}>{children}</g>
    </>
  );
}

interface LinesProps {
  readonly lines: FilmMap['walls'][number];
  readonly unit: number;
}

function Walls({ lines, unit }: LinesProps) {
  return (
    <>
      {lines.outer.map((line, i) => (
        <Haloed key={i} d={lineThrough(line)} colour="var(--mint)" widthPx={1.5 * unit} unit={unit} />
      ))}
      {lines.canal.map((line, i) => (
        <Haloed key={i} d={lineThrough(line)} colour="var(--mint)" widthPx={unit} unit={unit} />
      ))}
    </>
  );
}

function Before({ lines, unit }: LinesProps) {
  return lines.outer.map((line, i) => (
    <Haloed
      key={i}
      d={lineThrough(line)}
      colour="var(--soft)"
      widthPx={1.25 * unit}
      unit={unit}
      dash={`${2 * unit} ${4 * unit}`}
    />
  ));
}

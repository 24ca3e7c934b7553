/** The plan laid over a later film, as outlines so that the metal below stays to be seen, and the rods that were found. */
import type { FigurePoint, ViewFigure } from '@bonewright/construct';
import { type FoundRod, onFilm, type Pixel, type Placing } from '@bonewright/film';
import { useContext } from 'react';
import { lineThrough } from '../../plan/films/halo.tsx';
import { outlineOf } from '../../plan/films/outline.ts';
import { type FilmLine, HaloedLines } from '../overlay/haloed-lines.tsx';
import { PlateTurn } from '../overlay/plate-turn.ts';
import { uprightAt } from '../plate/turn.ts';

interface PlanOverlayProps {
  readonly figure: ViewFigure;
  readonly placing: Placing;
  readonly rods: readonly FoundRod[];
  /** Film pixels that make one pixel of the screen. */
  readonly unit: number;
}

const PLAN = 'var(--straw)';
const FOUND = 'var(--mint)';
const BONE_DASH = [2, 3];
const WORD_PX = 14;
const WORD_GAP_PX = 12;

export function PlanOverlay({ figure, placing, rods, unit }: PlanOverlayProps) {
  const place = (point: FigurePoint): Pixel => onFilm(placing, point);
  const pxPerMm = placing.pxPerMm.value ?? 1;
  const outline = ({ line, diameterMm }: { readonly line: readonly FigurePoint[]; readonly diameterMm: number }) =>
    `${lineThrough(outlineOf(line.map(place), (diameterMm * pxPerMm) / 2))}Z`;
  const { fragments, pins, columns, im } = figure;
  const bone = fragments.flatMap(({ outer }) =>
    outer.map((wall): FilmLine => ({ d: lineThrough(wall.map(place)), colour: PLAN, widthPx: 1, dash: BONE_DASH })),
  );
  const implants = [...columns, ...(im ? [im] : []), ...pins].map(
    (rod): FilmLine => ({ d: outline(rod), colour: PLAN, widthPx: 1.25 }),
  );
  const found = rods.map(({ line }): FilmLine => ({ d: lineThrough(line), colour: FOUND, widthPx: 1.75 }));
  return (
    <g>
      <HaloedLines unit={unit} lines={[...bone, ...implants, ...found]} />
      {pins.map(({ line }, i) => (
        <PinWord key={i} word={`P${i + 1}`} tip={place(line[0]!)} end={place(line.at(-1)!)} unit={unit} />
      ))}
    </g>
  );
}

interface PinWordProps {
  readonly word: string;
  readonly tip: Pixel;
  readonly end: Pixel;
  readonly unit: number;
}

/** Beyond the pin's outer end. */
function PinWord({ word, tip, end, unit }: PinWordProps) {
  const turn = useContext(PlateTurn);
  const length = Math.hypot(end[0] - tip[0], end[1] - tip[1]) || 1;
  const gap = (WORD_GAP_PX * unit) / length;
  const at: Pixel = [end[0] + (end[0] - tip[0]) * gap, end[1] + (end[1] - tip[1]) * gap];
  return (
    <g transform={uprightAt(turn, at)}>
      <text
        x={at[0]}
        y={at[1] + (WORD_PX / 3) * unit}
        textAnchor="middle"
        fontSize={WORD_PX * unit}
        strokeWidth={3.5 * unit}
        fill={PLAN}
        className="film-figure"
      >
        {word}
      </text>
    </g>
  );
}

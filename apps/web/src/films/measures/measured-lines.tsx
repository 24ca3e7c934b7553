/** Measurements by hand as they stand on the film, each with its letter and its value; every point can be moved. */
import type { Pixel } from '@bonewright/film';
import { useContext, useState } from 'react';
import { lineThrough } from '../../plan/films/halo.tsx';
import { HaloedLines } from '../overlay/haloed-lines.tsx';
import { Mark } from '../overlay/mark.tsx';
import { PlateTurn } from '../overlay/plate-turn.ts';
import { uprightAt } from '../plate/turn.ts';
import { CLICK_WORDS, type HandMeasure, letterOf, measured, resultWords } from './hand-measure.ts';
import type { Measures } from './use-measures.ts';

interface MeasuredLinesProps {
  readonly measures: Measures;
  readonly unit: number;
  readonly onSay: (words: string) => void;
}

const COLOUR = 'var(--chalk)';
const DASH = [2, 3];
const WORD_PX = 15;
const ABOVE_PX = 12;

interface Held {
  readonly measure: number;
  readonly point: number;
  readonly at: Pixel;
}

export function MeasuredLines({ measures, unit, onSay }: MeasuredLinesProps) {
  const turn = useContext(PlateTurn);
  const [held, hold] = useState<Held | null>(null);
  const { done, current, mmPerPixel, movePoint, remove } = measures;
  const shown = done.map((one, i) =>
    held?.measure === i ? { ...one, points: one.points.map((p, k) => (k === held.point ? held.at : p)) } : one,
  );
  return (
    <g>
      <HaloedLines unit={unit} lines={[...shown, ...(current ? [current] : [])].flatMap(linesOf)} />
      {shown.map((one, i) => {
        const result = measured(one, mmPerPixel);
        const letter = letterOf(i);
        const at = placeOfWords(one);
        return (
          <g key={one.id}>
            {one.points.map((point, k) => (
              <Mark
                key={k}
                at={point}
                word=""
                label={`${letter}, ${one.kind}, ${CLICK_WORDS[one.kind][k]}`}
                unit={unit}
                colour={COLOUR}
                balloon={null}
                onHold={(place) => hold({ measure: i, point: k, at: place })}
                onKeep={(place) => {
                  hold(null);
                  movePoint(one, k, place);
                  const moved = measured(
                    { ...one, points: one.points.map((p, n) => (n === k ? place : p)) },
                    mmPerPixel,
                  );
                  if (moved) onSay(`${letter} ${one.kind} ${resultWords(moved)}`);
                }}
                onRemove={() => remove(one)}
                onTap={() => undefined}
              />
            ))}
            {result && at && (
              <g transform={uprightAt(turn, at)}>
                <text
                  x={at[0]}
                  y={at[1] - ABOVE_PX * unit}
                  textAnchor="middle"
                  fontSize={WORD_PX * unit}
                  strokeWidth={3.5 * unit}
                  fill={COLOUR}
                  className="film-figure"
                >
                  {letter} {result.value === null ? 'not measured' : resultWords(result)}
                </text>
              </g>
            )}
          </g>
        );
      })}
    </g>
  );
}

function linesOf({ kind, points }: HandMeasure) {
  const line = (part: readonly Pixel[], dash?: readonly number[]) =>
    part.length < 2 ? [] : [{ d: lineThrough(part), colour: COLOUR, widthPx: 1.5, ...(dash ? { dash } : {}) }];
  if (kind !== 'diameter') return line(points);
  return [...line(points.slice(0, 2), DASH), ...line(points.slice(2))];
}

/** Beside the last line of it; an angle's words stand at its corner. */
function placeOfWords({ kind, points }: HandMeasure): Pixel | null {
  const [a, b] = kind === 'diameter' ? points.slice(2) : points;
  if (!a || !b) return null;
  return kind === 'angle' ? b : [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

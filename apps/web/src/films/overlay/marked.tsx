/** What the user marked: ball, four clicks, fracture line, ends. */
import type { Pixel } from '@bonewright/film';
import type { PointerEvent } from 'react';
import { Haloed, lineThrough } from '../../plan/films/halo.tsx';
import { placeOf, TARGET_WORDS, TARGETS, type Target } from '../marks/target.ts';
import type { Marks } from '../marks/use-marks.ts';
import type { Working } from '../marks/working.ts';
import { Mark } from './mark.tsx';

interface MarkedProps {
  readonly marks: Marks;
  readonly unit: number;
  /** The ball's rim was found: its mark would cover it. */
  readonly isBallFound: boolean;
  readonly onSay: (words: string) => void;
  readonly onTap: (event: PointerEvent) => void;
}

const WORD: Readonly<Record<Target, string>> = {
  ball: '',
  'click-1': '1',
  'click-2': '2',
  'click-3': '3',
  'click-4': '4',
  'fracture-1': '',
  'fracture-2': '',
  'end-1': '',
  'end-2': '',
};

const colourOf = (target: Target): string => (target.startsWith('fracture') ? 'var(--coral)' : 'var(--chalk)');

export function Marked({ marks, unit, isBallFound, onSay, onTap }: MarkedProps) {
  const { working, holdMark, keepMark } = marks;
  const [from, to] = working.fracture;
  return (
    <g>
      {from && to && (
        <Haloed
          d={lineThrough([from, to])}
          colour="var(--coral)"
          widthPx={2 * unit}
          unit={unit}
          dash={`${7 * unit} ${4 * unit}`}
        />
      )}
      {TARGETS.map((target) => {
        const at = placeOf(working, target);
        if (!at) return null;
        return (
          <g key={target} opacity={target === 'ball' && isBallFound ? 0.55 : 1}>
            <Mark
              at={at}
              word={WORD[target]}
              label={`${TARGET_WORDS[target]}: column ${at[0].toFixed(0)}, row ${at[1].toFixed(0)}`}
              unit={unit}
              colour={colourOf(target)}
              balloonDown={balloonDown(working, target, unit)}
              onTap={onTap}
              onHold={(place) => holdMark(target, place)}
              onKeep={(place) => {
                keepMark(target, place);
                onSay(saysPlace(target, place));
              }}
              onRemove={() => {
                keepMark(target, null);
                onSay(`${TARGET_WORDS[target]}: taken away`);
              }}
            />
          </g>
        );
      })}
    </g>
  );
}

const BALLOON_ROOM_PX = 24;

/** The balloons of 2 and 3 make way for each other where the fracture leaves little room. */
function balloonDown({ clicks: [, second, third] }: Working, target: Target, unit: number): number {
  if (!second || !third || (target !== 'click-2' && target !== 'click-3')) return 0;
  const apart = Math.abs(third[1] - second[1]) / unit;
  const missing = Math.max(0, BALLOON_ROOM_PX - apart) / 2;
  return target === 'click-2' ? -missing : missing;
}

export const saysPlace = (target: Target, [col, row]: Pixel): string =>
  `${TARGET_WORDS[target]}: column ${col.toFixed(0)}, row ${row.toFixed(0)}`;

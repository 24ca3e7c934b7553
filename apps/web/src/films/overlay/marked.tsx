/** What the user marked: ball, four clicks, fracture line, ends. */
import type { Pixel } from '@bonewright/film';
import { type PointerEvent, useContext } from 'react';
import { Haloed, lineThrough } from '../../plan/films/halo.tsx';
import { isOfKind, placeOf, TARGET_WORDS, TARGETS, type Target } from '../marks/target.ts';
import type { Marks } from '../marks/use-marks.ts';
import type { Working } from '../marks/working.ts';
import { type Turn, toScreen } from '../plate/turn.ts';
import { balloonFrom } from './balloon.ts';
import { Mark } from './mark.tsx';
import { PlateTurn } from './plate-turn.ts';

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
  'implant-1': '',
  'implant-2': '',
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
  const balloons = balloonsOf(working, unit, useContext(PlateTurn));
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
        const at = isOfKind(target, working.calibration.kind) ? placeOf(working, target) : null;
        if (!at) return null;
        return (
          <g key={target} opacity={target === 'ball' && isBallFound ? 0.55 : 1}>
            <Mark
              at={at}
              word={WORD[target]}
              label={`${TARGET_WORDS[target]}: column ${at[0].toFixed(0)}, row ${at[1].toFixed(0)}`}
              unit={unit}
              colour={colourOf(target)}
              balloon={balloons.get(target) ?? null}
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

/** Each numbered mark's balloon, clear of every mark and of the balloons before it. */
function balloonsOf(working: Working, unit: number, turn: Turn): ReadonlyMap<Target, Pixel> {
  const onScreen = ([col, row]: Pixel): Pixel => toScreen(turn, [col / unit, row / unit]);
  const placed = TARGETS.flatMap((target) => {
    const at = isOfKind(target, working.calibration.kind) ? placeOf(working, target) : null;
    return at ? [{ target, at: onScreen(at) }] : [];
  });
  const taken: Pixel[] = [];
  const balloons = new Map<Target, Pixel>();
  for (const { target, at } of placed) {
    if (!WORD[target]) continue;
    const others = placed.filter((other) => other.target !== target).map((other) => other.at);
    const [dx, dy] = balloonFrom(at, [...others, ...taken]);
    taken.push([at[0] + dx, at[1] + dy]);
    balloons.set(target, [dx * unit, dy * unit]);
  }
  return balloons;
}

export const saysPlace = (target: Target, [col, row]: Pixel): string =>
  `${TARGET_WORDS[target]}: column ${col.toFixed(0)}, row ${row.toFixed(0)}`;

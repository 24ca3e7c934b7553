/** The three points on the film, each to be dragged or nudged. */
import type { Pixel } from '@bonewright/film';
import { Mark } from '../overlay/mark.tsx';
import type { LayingOver } from './use-placing.ts';

interface PointMarksProps {
  readonly laying: LayingOver;
  readonly unit: number;
  readonly onSay: (words: string) => void;
}

const BALLOON_PX = 20;

export function PointMarks({ laying, unit, onSay }: PointMarksProps) {
  const { points, landmarks } = laying;
  return points.map(({ landmark, at }, i) => {
    const words = landmarks.find(({ id }) => id === landmark)?.words ?? landmark;
    return (
      at && (
        <Mark
          key={landmark}
          at={at}
          word={String(i + 1)}
          label={`Point ${i + 1}, ${words}`}
          unit={unit}
          colour="var(--chalk)"
          balloon={[-BALLOON_PX * unit, 0] satisfies Pixel}
          onHold={(place) => laying.hold(i, place)}
          onKeep={(place) => {
            laying.keep(i, place);
            onSay(`${words}, moved`);
          }}
          onRemove={() => laying.keep(i, null)}
          onTap={() => undefined}
        />
      )
    );
  });
}

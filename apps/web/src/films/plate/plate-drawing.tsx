/** What is drawn over the film: what was found, what was marked, and their figures. */
import type { Trace } from '@bonewright/film';
import type { PointerEvent, ReactNode } from 'react';
import type { Size } from '../../drawing/use-size.ts';
import { readNumber } from '../../form/read-number.ts';
import type { Marks } from '../marks/use-marks.ts';
import { Found } from '../overlay/found.tsx';
import { Marked } from '../overlay/marked.tsx';
import { PlateTurn } from '../overlay/plate-turn.ts';
import { Written } from '../overlay/written.tsx';
import { matrixIn, type Viewport } from './viewport.ts';

interface PlateDrawingProps {
  readonly name: string;
  readonly view: Viewport;
  readonly plate: Size;
  readonly marks: Marks | null;
  readonly trace: Trace | null;
  /** The film is wanted without its marks. */
  readonly isBare: boolean;
  readonly over: (unit: number, onSay: (words: string) => void) => ReactNode;
  readonly onSay: (words: string) => void;
  readonly onTap: (event: PointerEvent) => void;
}

export function PlateDrawing(props: PlateDrawingProps) {
  const { name, view, plate, marks, trace, isBare, over, onSay, onTap } = props;
  if (plate.width === 0) return null;
  const unit = 1 / view.scale;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a drawing
    <svg
      viewBox={`0 0 ${plate.width} ${plate.height}`}
      className="plate-drawing"
      role="group"
      aria-label={`Marks on the ${name}`}
      visibility={isBare ? 'hidden' : 'visible'}
    >
      <PlateTurn value={view.turn}>
        <g transform={`matrix(${matrixIn(view, plate).join(' ')})`}>
          {trace && <Found trace={trace} unit={unit} />}
          {trace && marks && <Written trace={trace} unit={unit} ballMm={ballMm(marks)} />}
          {over(unit, onSay)}
          {marks && <Marked marks={marks} unit={unit} isBallFound={trace?.ball != null} onSay={onSay} onTap={onTap} />}
        </g>
      </PlateTurn>
    </svg>
  );
}

const ballMm = ({ working }: Marks): number | null =>
  working.calibration.kind === 'ball' ? readNumber(working.calibration.diameterMm) : null;

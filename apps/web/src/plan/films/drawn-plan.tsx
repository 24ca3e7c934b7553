/** Pins, IM pin and column at true scale on a film. */
import type { Pixel } from '@bonewright/film';
import type { Placement, Point3 } from '../../drawing/geometry/placement.ts';
import { Haloed, lineThrough } from './halo.tsx';
import { outlineOf } from './outline.ts';

interface DrawnPlanProps {
  readonly placement: Placement;
  readonly place: (point: Point3) => Pixel;
  readonly pxPerMm: number;
  readonly selected: number;
  /** Film pixels that make one pixel of the screen. */
  readonly unit: number;
}

const WORD_PX = 14;
const WORD_GAP_PX = 10;

export function DrawnPlan({ placement, place, pxPerMm, selected, unit }: DrawnPlanProps) {
  const { columns, im, pins } = placement;
  return (
    <g>
      {columns.map(({ side, line, diameterMm }) => {
        const outline = `${lineThrough(outlineOf(line.map(place), (diameterMm * pxPerMm) / 2))}Z`;
        return (
          <g key={side}>
            <path d={outline} fill="var(--straw)" fillOpacity="0.16" />
            <Haloed d={outline} colour="var(--straw)" widthPx={1.25 * unit} unit={unit} />
          </g>
        );
      })}
      {im && (
        <Haloed
          d={lineThrough(im.line.map(place))}
          colour="var(--straw)"
          widthPx={im.diameterMm * pxPerMm}
          unit={unit}
        />
      )}
      {pins.map((pin, i) => {
        const [tip, end] = [place(pin.tip), place(pin.end)];
        const colour = i === selected ? 'var(--white)' : 'var(--straw)';
        return (
          <g key={i}>
            <Haloed d={lineThrough([tip, end])} colour={colour} widthPx={pin.diameterMm * pxPerMm} unit={unit} />
            <PinWord at={end} from={tip} colour={colour} unit={unit} word={`P${i + 1}`} />
          </g>
        );
      })}
    </g>
  );
}

interface PinWordProps {
  readonly at: Pixel;
  readonly from: Pixel;
  readonly colour: string;
  readonly unit: number;
  readonly word: string;
}

function PinWord({ at: [x, y], from: [tipX], colour, unit, word }: PinWordProps) {
  const side = x >= tipX ? 1 : -1;
  return (
    <text
      x={x + side * WORD_GAP_PX * unit}
      y={y + (WORD_PX / 3) * unit}
      textAnchor={side > 0 ? 'start' : 'end'}
      fontSize={WORD_PX * unit}
      strokeWidth={3.5 * unit}
      className="film-word"
      fill={colour}
    >
      {word}
    </text>
  );
}

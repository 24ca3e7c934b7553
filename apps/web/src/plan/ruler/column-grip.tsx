/** The column as something to take hold of: up and away from the skin, down towards it. */
import { inPlane } from '../../drawing/geometry/side-profile.ts';
import { pathOf } from '../../drawing/scale.ts';
import type { RulerLayout } from './layout.ts';
import { useDrag } from './use-drag.ts';

interface ColumnGripProps {
  readonly layout: RulerLayout;
  readonly clearanceMm: number;
  readonly onClear: (clearanceMm: number) => void;
}

const STEP_MM = 0.5;
const FINE_MM = 0.1;
const MOST_CLEARANCE_MM = 30;

export function ColumnGrip({ layout: { placement, scale }, clearanceMm, onClear }: ColumnGripProps) {
  const drag = useDrag(
    () => clearanceMm,
    (startMm, _right, downPx) => onClear(startMm - downPx / scale.pxPerMm),
  );
  const column = placement.columns.find(({ side }) => side === 'near');
  if (!column) return null;
  const path = pathOf(
    column.line.map((point) => inPlane(point, placement.aboutDeg)),
    scale,
  );
  return (
    <g
      {...drag}
      role="slider"
      tabIndex={0}
      className="column-grip"
      aria-label="Column"
      aria-orientation="vertical"
      aria-valuemin={0}
      aria-valuemax={MOST_CLEARANCE_MM}
      aria-valuenow={clearanceMm}
      aria-valuetext={`${clearanceMm.toFixed(1)} millimetres clear of the skin`}
      onKeyDown={(event) => {
        const step = event.shiftKey ? FINE_MM : STEP_MM;
        if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
        event.preventDefault();
        onClear(clearanceMm + (event.key === 'ArrowUp' ? step : -step));
      }}
    >
      <path
        className="column-outline"
        d={path}
        fill="none"
        stroke="transparent"
        strokeLinecap="round"
        strokeWidth={column.diameterMm * scale.pxPerMm}
      />
    </g>
  );
}

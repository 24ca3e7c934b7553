/** Column and IM pin on the ruler. */
import { memo } from 'react';
import { distance, type PlacedPin } from '../../drawing/geometry/placement.ts';
import { inPlane } from '../../drawing/geometry/side-profile.ts';
import { Rod } from '../../drawing/rod.tsx';
import { pathOf, roundedPath } from '../../drawing/scale.ts';
import type { RulerLayout } from './layout.ts';

interface LayoutProps {
  readonly layout: RulerLayout;
}

export const Columns = memo(({ layout: { placement, scale } }: LayoutProps) =>
  placement.columns.map(({ side, diameterMm, line }) => {
    const path = pathOf(
      line.map((point) => inPlane(point, placement.aboutDeg)),
      scale,
    );
    const widthPx = diameterMm * scale.pxPerMm;
    return (
      <g key={side}>
        <Rod path={path} widthPx={widthPx} linePx={1.75} />
        <Rod path={path} widthPx={widthPx} linePx={1.75} outline="none" fill="url(#stipple-column)" />
      </g>
    );
  }),
);

export const ImPin = memo(({ layout: { placement, scale } }: LayoutProps) => {
  const { im, aboutDeg } = placement;
  if (!im) return null;
  const line = im.line.map((point) => inPlane(point, aboutDeg));
  return <Rod path={roundedPath(line, scale, 26)} widthPx={im.diameterMm * scale.pxPerMm} />;
});

/** The selected pin's free length as a dimension line beside it. */
export const FreeLength = memo(({ layout: { placement, scale }, pin }: LayoutProps & { readonly pin: PlacedPin }) => {
  const [nearS, nearH] = inPlane(pin.nearWall, placement.aboutDeg);
  const [columnS, columnH] = inPlane(pin.columnNear, placement.aboutDeg);
  const x = Math.max(scale.x(nearS), scale.x(columnS)) + (pin.diameterMm / 2) * scale.pxPerMm + 16;
  const [low, high] = [scale.y(nearH), scale.y(columnH)];
  if (low - high < 24) return null;
  return (
    <g stroke="var(--moss)" fill="var(--moss)" className="free-length">
      <path d={`M${x - 5} ${low}h10M${x - 5} ${high}h10M${x} ${low}V${high}`} fill="none" />
      <path d={`M${x} ${high}l3 9h-6zM${x} ${low}l3 -9h-6z`} stroke="none" />
      <text x={x + 7} y={(low + high) / 2 + 4} stroke="none">
        {`${distance(pin.nearWall, pin.columnNear).toFixed(1)} free`}
      </text>
    </g>
  );
});

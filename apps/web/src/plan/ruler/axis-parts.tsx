/** Below the bone: the ruler and the distances from pin to pin as dimension lines. */
import { memo } from 'react';
import type { AlongProps } from './bone-parts.tsx';
import type { RulerLayout } from './layout.ts';

const TEN = 10;
const FIVE = 5;
const ROOM_FOR_WORDS_PX = 34;

/** Scales finer than this have room for every millimetre. */
const ROOM_FOR_EACH_PX = 4;

export const RulerTicks = memo(({ originX, pxPerMm, lengthMm, rulerY }: AlongProps) => {
  const x = (mm: number) => originX + mm * pxPerMm;
  const places = Array.from({ length: Math.floor(lengthMm) + 1 }, (_, mm) => mm);
  const shown = places.filter((mm) => pxPerMm >= ROOM_FOR_EACH_PX || mm % FIVE === 0);
  const ticks = shown.map((mm) => `M${x(mm)} ${rulerY}v${mm % TEN === 0 ? 10 : mm % FIVE === 0 ? 7 : 4}`);
  return (
    <g className="ruler-ticks">
      <path d={`${ticks.join('')}M${x(lengthMm)} ${rulerY}v10`} stroke="var(--ink)" />
      <path d={`M${x(0)} ${rulerY}H${x(lengthMm)}`} stroke="var(--ink)" strokeWidth="1.5" />
      {places
        .filter((mm) => mm % TEN === 0)
        .map((mm) => (
          <text key={mm} x={x(mm)} y={rulerY + 26} textAnchor="middle" className="ruler-number">
            {mm}
          </text>
        ))}
      <text x={x(lengthMm) + 2} y={rulerY + 26} className="ruler-label">
        {`${lengthMm.toFixed(lengthMm % 1 === 0 ? 0 : 1)} mm`}
      </text>
    </g>
  );
});

/** Dimension lines between neighbouring places, each with its length. */
export function Apart({ layout, placesMm }: { readonly layout: RulerLayout; readonly placesMm: readonly number[] }) {
  const { scale, lengthMm, apartY } = layout;
  const edges = [0, ...placesMm.toSorted((a, b) => a - b), lengthMm];
  return (
    <g className="ruler-apart">
      {edges.map((edge, i) => (
        <line
          key={`${edge} ${i}`}
          x1={scale.x(edge)}
          x2={scale.x(edge)}
          y1={apartY - 6}
          y2={apartY + 6}
          stroke="var(--ink)"
        />
      ))}
      {edges.slice(1).map((to, i) => (
        <Dimension key={`${to} ${i}`} fromPx={scale.x(edges[i]!)} toPx={scale.x(to)} y={apartY} mm={to - edges[i]!} />
      ))}
    </g>
  );
}

interface DimensionProps {
  readonly fromPx: number;
  readonly toPx: number;
  readonly y: number;
  readonly mm: number;
}

function Dimension({ fromPx, toPx, y, mm }: DimensionProps) {
  const middle = (fromPx + toPx) / 2;
  const room = toPx - fromPx;
  const gap = room > ROOM_FOR_WORDS_PX + 12 ? ROOM_FOR_WORDS_PX / 2 : 0;
  return (
    <g stroke="var(--ink)" fill="var(--ink)">
      {gap > 0 && (
        <>
          <path d={`M${fromPx + 1} ${y}L${middle - gap} ${y}M${middle + gap} ${y}L${toPx - 1} ${y}`} fill="none" />
          <path d={`M${fromPx + 1} ${y}l9 -3v6zM${toPx - 1} ${y}l-9 -3v6z`} stroke="none" />
        </>
      )}
      <text x={middle} y={gap > 0 ? y + 5 : y + 18} textAnchor="middle" className="ruler-number" stroke="none">
        {room > 14 ? mm.toFixed(1) : ''}
      </text>
    </g>
  );
}

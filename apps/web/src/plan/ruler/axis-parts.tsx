/** Below the bone: the ruler and the distances from pin to pin as dimension lines. */
import type { RulerLayout } from './layout.ts';

const TEN = 10;
const FIVE = 5;
const ROOM_FOR_WORDS_PX = 34;

export function RulerTicks({ layout: { scale, lengthMm, rulerY } }: { readonly layout: RulerLayout }) {
  const places = Array.from({ length: Math.floor(lengthMm) + 1 }, (_, mm) => mm);
  const fine = scale.pxPerMm >= 4;
  return (
    <g className="ruler-ticks">
      <line x1={scale.x(0)} x2={scale.x(lengthMm)} y1={rulerY} y2={rulerY} stroke="var(--ink)" strokeWidth="1.5" />
      {places
        .filter((mm) => fine || mm % FIVE === 0)
        .map((mm) => (
          <line
            key={mm}
            x1={scale.x(mm)}
            x2={scale.x(mm)}
            y1={rulerY}
            y2={rulerY + (mm % TEN === 0 ? 10 : mm % FIVE === 0 ? 7 : 4)}
            stroke="var(--ink)"
          />
        ))}
      {places
        .filter((mm) => mm % TEN === 0)
        .map((mm) => (
          <text key={mm} x={scale.x(mm)} y={rulerY + 26} textAnchor="middle" className="ruler-number">
            {mm}
          </text>
        ))}
      <line x1={scale.x(lengthMm)} x2={scale.x(lengthMm)} y1={rulerY} y2={rulerY + 10} stroke="var(--ink)" />
      <text x={scale.x(lengthMm) + 2} y={rulerY + 26} className="ruler-label">
        {`${lengthMm.toFixed(lengthMm % 1 === 0 ? 0 : 1)} mm`}
      </text>
    </g>
  );
}

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

/** The bone's own part of the ruler: millimetre grid, keep-outs, walls, canal, broken faces, skin. */
import { memo } from 'react';
import { isSameScale, pathOf } from '../../drawing/scale.ts';
import type { RulerLayout } from './layout.ts';

const FIVE = 5;

interface LayoutProps {
  readonly layout: RulerLayout;
}

export interface AlongProps {
  readonly originX: number;
  readonly pxPerMm: number;
  readonly lengthMm: number;
  readonly rulerY: number;
}

/** What a part needs that only knows the length of the bone: it stays as it is while a pin is dragged. */
export const alongOf = ({ scale: { originX, pxPerMm }, lengthMm, rulerY }: RulerLayout): AlongProps => ({
  originX,
  pxPerMm,
  lengthMm,
  rulerY,
});

export const Grid = memo(({ originX, pxPerMm, lengthMm, rulerY }: AlongProps) => {
  const places = Array.from({ length: Math.floor(lengthMm) + 1 }, (_, mm) => mm);
  const path = (some: readonly number[]) => some.map((mm) => `M${originX + mm * pxPerMm} 40V${rulerY}`).join('');
  return (
    <g fill="none">
      <path d={path(places)} stroke="var(--grid)" />
      <path d={path(places.filter((mm) => mm % FIVE === 0))} stroke="var(--line)" />
    </g>
  );
});

export const KeepOuts = memo(({ layout }: LayoutProps) => {
  const { scale, profile, rulerY, placement } = layout;
  const walls = profile.fragments.flatMap(({ outline }) => outline.map(([, h]) => h));
  const top = scale.y(Math.max(...walls)) - 10;
  return placement.keepOuts.map(({ fromMm, toMm, why }) => (
    <g key={`${why} ${fromMm}`} className="ruler-keepout">
      <title>{`No pin from ${fromMm.toFixed(1)} to ${toMm.toFixed(1)} mm: ${why}`}</title>
      <rect
        x={scale.x(fromMm)}
        width={Math.max(0, scale.x(toMm) - scale.x(fromMm))}
        y={top}
        height={rulerY - top}
        fill="url(#hatch-keepout)"
        opacity="0.6"
      />
      {[fromMm, toMm].map((edge) => (
        <line
          key={edge}
          x1={scale.x(edge)}
          x2={scale.x(edge)}
          y1={top}
          y2={rulerY}
          stroke="var(--ink2)"
          opacity="0.6"
        />
      ))}
    </g>
  ));
});

/** The bone and the skin stay as they are while a pin is dragged, as long as the scale does. */
const isSameBone = (a: LayoutProps, b: LayoutProps): boolean =>
  a.layout.profile === b.layout.profile && isSameScale(a.layout.scale, b.layout.scale);

export const Bone = memo(
  ({ layout: { profile, scale } }: LayoutProps) =>
    profile.fragments.map(({ outline, canal, solid }, i) => (
      <g key={i}>
        <path d={pathOf(outline, scale, true)} fill="var(--bone)" />
        {solid.map((run) => (
          <path key={run[0]?.join()} d={pathOf(run, scale, true)} fill="url(#stipple-bone)" />
        ))}
        {canal.flat().map((line) => (
          <path key={line[0]?.join()} d={pathOf(line, scale)} fill="none" stroke="var(--ink)" strokeWidth="1" />
        ))}
        <path
          d={pathOf(outline, scale, true)}
          fill="none"
          stroke="var(--ink)"
          strokeWidth="1.75"
          strokeLinejoin="round"
        />
      </g>
    )),
  isSameBone,
);

export const Skin = memo(({ layout: { profile, scale } }: LayoutProps) => {
  if (profile.skin.length === 0) return null;
  return (
    <path d={pathOf(profile.skin, scale)} fill="none" stroke="var(--ink2)" strokeWidth="1.25" strokeDasharray="7 4" />
  );
}, isSameBone);

export interface SideLabel {
  readonly word: string;
  readonly y: number;
}

/** Words at the left, each at the height of what it names; pushed apart where they would meet. */
export function SideLabels({ names }: { readonly names: readonly SideLabel[] }) {
  return names.map(({ word, y }, i) => {
    const above = names[i - 1];
    return (
      <text
        key={word}
        x="0"
        y={above ? Math.max(y, above.y + 16) : y}
        className="ruler-label"
        dominantBaseline="middle"
      >
        {word}
      </text>
    );
  });
}

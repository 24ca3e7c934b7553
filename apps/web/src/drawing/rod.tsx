/** A round rod seen from the side: two outlines and what is between them. */
import type { CSSProperties } from 'react';

interface RodProps {
  readonly path: string;
  readonly widthPx: number;
  readonly outline?: string;
  readonly fill?: string;
  readonly linePx?: number;
  readonly cap?: 'butt' | 'round';
}

export function Rod({
  path,
  widthPx,
  outline = 'var(--ink)',
  fill = 'var(--leaf)',
  linePx = 1.5,
  cap = 'round',
}: RodProps) {
  const line: CSSProperties = { fill: 'none', strokeLinejoin: 'round', strokeLinecap: cap };
  return (
    <>
      <path d={path} style={{ ...line, stroke: outline, strokeWidth: Math.max(widthPx, 2.5) + linePx }} />
      <path d={path} style={{ ...line, stroke: fill, strokeWidth: Math.max(widthPx, 2.5) - linePx }} />
    </>
  );
}

/** How far two fragments override, from the middle of each broken face as marked in the views. */
import { value } from '@bonewright/evidence';
import type { Measured, Pixel, TracedView } from '../model/trace.ts';
import { coordinatesOf, lineFrame } from '../trace/frame.ts';

/**
 * Millimetres that the fragments override along the proximal axis (below 0: a gap), the mean of the views that have both
 * ends marked. The sd holds the clicks, the scales and half of what the views differ by.
 */
export function overrideMm(
  views: readonly TracedView[],
  ends: readonly (readonly [Pixel, Pixel] | undefined)[],
): Measured {
  const seen = views.flatMap((view, i) => {
    const marked = ends[i];
    return marked ? [overrideIn(view, marked)] : [];
  });
  if (seen.length === 0) return { value: null, sd: null, why: 'mark the broken end of both fragments in a view' };
  const mean = seen.reduce((t, m) => t + m.mm, 0) / seen.length;
  const apart = Math.max(...seen.map((m) => Math.abs(m.mm - mean)));
  return { value: mean, sd: Math.hypot(apart, Math.hypot(...seen.map((m) => m.sd)) / seen.length) };
}

function overrideIn({ trace }: TracedView, [proximal, distal]: readonly [Pixel, Pixel]): { mm: number; sd: number } {
  const { axis } = trace.segments[0]!;
  const frame = lineFrame(axis.from, axis.to);
  const px = coordinatesOf(frame, proximal)[0] - coordinatesOf(frame, distal)[0];
  const { value: mm, sd } = trace.mmPerPixel;
  return { mm: px * mm!, sd: Math.hypot(Math.SQRT2 * value('measure.click.sd') * mm!, px * (sd ?? 0)) };
}

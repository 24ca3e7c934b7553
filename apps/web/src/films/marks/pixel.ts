import type { Pixel } from '@bonewright/film';

export type MaybePixel = Pixel | null;

/** A place on a film out of something that was kept; null for anything else. */
export function readPixel(kept: unknown): MaybePixel {
  if (!Array.isArray(kept) || kept.length !== 2) return null;
  const [col, row]: unknown[] = kept;
  return typeof col === 'number' && typeof row === 'number' ? [col, row] : null;
}

/** Exactly that many places, each perhaps null; none where it is something else. */
export function readPixels(kept: unknown, count: number): MaybePixel[] {
  return Array.isArray(kept) && kept.length === count ? kept.map(readPixel) : [];
}

/** Pins spread over the places of a fragment: one at each end, the rest evenly between them. */
import { value } from '@bonewright/evidence';
import type { Case } from '../model/case-file.ts';
import { found } from '../model/figures.ts';
import type { Site } from './sites.ts';

/** Least distance to a neighbour in a bone of that width. */
export type Spacing = (boneWidthMm: number) => number;

/** What the check of a pin and its neighbour calls good. */
export function spacingOf({ drawer }: Case, pinId: string): Spacing {
  const least = value('rule.pin-spacing.stop') * found(drawer.pins, pinId).diameterMm;
  return (boneWidthMm) => Math.max(least, value('rule.pin-spacing.watch') * boneWidthMm);
}

/** Layouts of `count` pins, ascending: on the calmest places, then with each more watch allowed. Empty where none fits. */
export function layoutsOf(sites: readonly Site[], count: number, spacing: Spacing): Site[][] {
  const levels = [...new Set(sites.map(({ watches }) => watches.length))].toSorted((a, b) => a - b);
  const layouts = levels
    .map((level) =>
      spread(
        sites.filter(({ watches }) => watches.length <= level),
        count,
        spacing,
      ),
    )
    .filter((layout) => layout !== null);
  return layouts.filter((layout, i) => layouts.findIndex((other) => isSame(other, layout)) === i);
}

const isSame = (a: readonly Site[], b: readonly Site[]): boolean => a.every(({ sMm }, i) => b[i]?.sMm === sMm);

function spread(sites: readonly Site[], count: number, spacing: Spacing): Site[] | null {
  const first = sites[0];
  const last = sites[sites.length - 1];
  if (!first || !last) return null;
  const step = (last.sMm - first.sMm) / (count - 1);
  const placed = Array.from({ length: count }, (_, i) => nearest(sites, first.sMm + step * i));
  const fits = placed.every((site, i) => {
    const before = placed[i - 1];
    return !before || site.sMm - before.sMm >= spacing(Math.max(site.boneWidthMm, before.boneWidthMm));
  });
  return fits ? placed : null;
}

const nearest = (sites: readonly Site[], sMm: number): Site =>
  sites.reduce((best, site) => (Math.abs(site.sMm - sMm) < Math.abs(best.sMm - sMm) ? site : best));

/** What a surgeon's description of a fracture begins with where the films say nothing: guesses, named as such, to be corrected. */
import { value } from '@bonewright/evidence';

export interface FirstDescription {
  readonly gapMm: number;
  readonly keepOutMm: readonly [proximal: number, distal: number];
  readonly softTissueMm: readonly [proximal: number, distal: number];
}

/** Gap as a fracture set by hand keeps; keep-outs and depth of skin in widths of the bone's two ends. */
export function firstDescription(
  stations: readonly { readonly outerMm: readonly [number, number] }[],
): FirstDescription {
  const widths = [stations[0], stations.at(-1)].map((s) => Math.max(...(s?.outerMm ?? [0])));
  const times = (id: string): [number, number] => [widths[0]! * value(id), widths[1]! * value(id)];
  return {
    gapMm: value('rule.first-guess.gap'),
    keepOutMm: times('rule.first-guess.keep-out'),
    softTissueMm: times('rule.first-guess.soft-tissue'),
  };
}

/** The drawing in space in words, for those who do not see it. */
import type { Case } from '@bonewright/construct';
import type { Placement } from '../../drawing/geometry/placement.ts';
import { figure } from '../words.ts';

export function spaceSays({ corridors, softTissueMm }: Case, { pins, columns, im }: Placement): string {
  const parts = [
    `${pins.length} pins, ${columns.length === 1 ? 'one column' : `${columns.length} columns`}`,
    im ? `an IM pin of ${figure(im.diameterMm, 2)} millimetres` : 'no IM pin',
    ...(corridors?.length ? ['the safe corridors as bands on the bone'] : []),
    ...(softTissueMm?.length ? ['the skin where it is asked for'] : []),
  ];
  return `The two parts of the bone with the fracture between them, ${parts.join(', ')}. Proximal end up.`;
}

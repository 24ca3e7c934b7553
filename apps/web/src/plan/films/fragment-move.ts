/** The distal fragment of one film moved on the screen: turned about the fracture, then shifted across and along the bone. */
import type { Pixel, ReductionMove } from '@bonewright/film';

/** What the fragment is moved by; pixels of the film, unit vectors. */
export interface Lever {
  /** Distally along the proximal part. */
  readonly along: Pixel;
  /** Square to it, towards medial or cranial. */
  readonly across: Pixel;
  /** About this the bend turns it. */
  readonly pivot: Pixel;
  readonly mmPerPixel: number;
}

interface MovedFragment {
  /** For what is drawn, an SVG transform. */
  readonly transform: string;
  readonly place: (at: Pixel) => Pixel;
}

const RADIANS = Math.PI / 180;

/** `view`: 0 craniocaudal, 1 mediolateral. A turn about the bone itself does not show on a film. */
export function moved({ along, across, pivot, mmPerPixel }: Lever, move: ReductionMove, view: 0 | 1): MovedFragment {
  const acrossPx = (move.translationMm?.[view] ?? 0) / mmPerPixel;
  const alongPx = (move.lengthMm ?? 0) / mmPerPixel;
  const shift: Pixel = [across[0] * acrossPx + along[0] * alongPx, across[1] * acrossPx + along[1] * alongPx];
  const sense = Math.sign(along[0] * across[1] - along[1] * across[0]);
  const turnDeg = sense * (move.angulationDeg?.[view] ?? 0);
  const [c, s] = [Math.cos(turnDeg * RADIANS), Math.sin(turnDeg * RADIANS)];
  return {
    transform: `translate(${shift.join(' ')}) rotate(${turnDeg} ${pivot.join(' ')})`,
    place: ([x, y]) => {
      const [dx, dy] = [x - pivot[0], y - pivot[1]];
      return [pivot[0] + c * dx - s * dy + shift[0], pivot[1] + s * dx + c * dy + shift[1]];
    },
  };
}

/** How far a drag across the film moves the fragment, in mm: across the bone and along it. */
export function draggedMm(
  { along, across, mmPerPixel }: Lever,
  [dx, dy]: Pixel,
): readonly [across: number, along: number] {
  return [(dx * across[0] + dy * across[1]) * mmPerPixel, (dx * along[0] + dy * along[1]) * mmPerPixel];
}

/** How far a drag from one place to another turns the fragment about where its pivot now is; towards medial or cranial. */
export function draggedDeg({ along, across }: Lever, pivot: Pixel, from: Pixel, to: Pixel): number {
  const angle = ([x, y]: Pixel) => Math.atan2(y - pivot[1], x - pivot[0]) / RADIANS;
  const turn = ((((angle(to) - angle(from) + 180) % 360) + 360) % 360) - 180;
  return turn * Math.sign(along[0] * across[1] - along[1] * across[0]);
}

/**
 * A construct as short pieces of tube and rod seen from one side, farthest first: painted in that order each hides
 * what lies behind it.
 */
import type { Case } from '@bonewright/construct';
import type { Placement } from '../placement.ts';
import type { Eye } from './eye.ts';
import type { Piece } from './piece.ts';
import { bonePieces, canalPieces, corridorPieces, lookAt, skinPieces } from './rings.ts';
import { columnPieces, imPieces, pinPieces } from './rods.ts';

export interface Shown {
  /** The bone is seen through: canal, and what of pins and IM pin is inside. */
  readonly inside: boolean;
  readonly skin: boolean;
}

export function spacePieces(patientCase: Case, placement: Placement, eye: Eye, shown: Shown): Piece[] {
  const look = lookAt(patientCase, placement, eye);
  const { project } = look;
  const isOutside = ({ alongMm }: Piece) => alongMm < 0 || alongMm > patientCase.bone.lengthMm;
  const pieces = [
    ...bonePieces(look),
    ...corridorPieces(look),
    ...(shown.inside ? canalPieces(look) : []),
    ...(shown.skin ? skinPieces(look) : []),
    ...columnPieces(placement, project),
    ...placement.pins.flatMap((pin, i) => pinPieces(pin, i, placement, project, shown.inside)),
    ...imPieces(placement, project).filter((piece) => shown.inside || isOutside(piece)),
  ];
  return pieces.toSorted((a, b) => a.depth - b.depth);
}

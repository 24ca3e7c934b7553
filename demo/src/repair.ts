/** How an invented patient was really operated on: the plan's pins with the slips of a hand, as films show them. */
import type { Case, Construct, ViewFigure } from '@bonewright/construct';
import { viewFigures } from '@bonewright/construct';
import type { BonePlace, Repair, RepairRod } from './films/repair-solids.ts';
import type { Slip } from './patients.ts';

/** The construct as it stands in the animal. */
export function asOperated(construct: Construct, slips: readonly Slip[]): Construct {
  const pins = construct.pins.map((pin, i) => {
    const { alongMm = 0, tiltDeg = 0 } = slips.find((slip) => slip.pin === i + 1) ?? {};
    return { ...pin, sMm: pin.sMm + alongMm, tiltDeg: pin.tiltDeg + tiltDeg };
  });
  return { ...construct, pins };
}

/** What of it lies in the beam, in the bone's own millimetres. */
export function repairOf(patientCase: Case, construct: Construct, day: number, callus: number): Repair {
  const [craniocaudal, mediolateral] = viewFigures(patientCase, construct);
  if (!craniocaudal || !mediolateral) throw new Error('a construct has two views');
  return { day, callus, rods: rodsOf(craniocaudal, mediolateral) };
}

function rodsOf(craniocaudal: ViewFigure, mediolateral: ViewFigure): RepairRod[] {
  type Line = ViewFigure['pins'][number]['line'];
  const inSpace = (seen: Line, square: Line): BonePlace[] => seen.map(([s, w], i) => [s, w, square[i]?.[1] ?? 0]);
  const pins = craniocaudal.pins.map(
    ({ line, diameterMm }, i): RepairRod => ({
      line: inSpace(line, mediolateral.pins[i]?.line ?? line),
      diameterMm,
      of: 'steel',
    }),
  );
  const columns = craniocaudal.columns.map(
    ({ line, diameterMm }, i): RepairRod => ({
      line: inSpace(line, mediolateral.columns[i]?.line ?? line),
      diameterMm,
      of: 'putty',
    }),
  );
  const { im } = craniocaudal;
  const imLines = im ? [[im.line, mediolateral.im?.line] as const, [im.bend, mediolateral.im?.bend] as const] : [];
  const imPin = imLines.flatMap(([seen, square]): RepairRod[] =>
    im && seen && square ? [{ line: inSpace(seen, square), diameterMm: im.diameterMm, of: 'steel' }] : [],
  );
  return [...pins, ...columns, ...imPin];
}

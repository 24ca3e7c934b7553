/** Everything there is to say of a dose before it is signed: its arithmetic and every remark, the gravest first. */
import { cautionRemarks } from './checks/cautions.ts';
import { earlierRemarks } from './checks/earlier.ts';
import { localRemarks } from './checks/local-anaesthetic.ts';
import { massRemarks } from './checks/mass.ts';
import { rangeRemarks } from './checks/range.ts';
import { strengthRemarks } from './checks/strength.ts';
import { volumeRemarks } from './checks/volume.ts';
import type { DoseLine } from './dose-line.ts';
import type { DoseContext } from './given.ts';
import { NEEDS, type Remark } from './remark.ts';
import { type Worked, workOut } from './work-out.ts';

export interface Judged {
  readonly line: DoseLine;
  readonly worked: Worked;
  readonly remarks: readonly Remark[];
}

/** Works the line out and judges it. Throws InputError where its units do not fit each other or its drug. */
export function judgeDose(line: DoseLine, context: DoseContext): Judged {
  const worked = workOut(line);
  const { perKg, unit } = worked;
  const remarks = [
    ...massRemarks(line, context),
    ...rangeRemarks({ ...line, perKg, unit }),
    ...strengthRemarks(line),
    ...volumeRemarks(line, worked),
    ...localRemarks(line, worked, context),
    ...earlierRemarks(line, context),
    ...cautionRemarks(line),
  ];
  return { line, worked, remarks: remarks.toSorted((a, b) => NEEDS.indexOf(b.needs) - NEEDS.indexOf(a.needs)) };
}

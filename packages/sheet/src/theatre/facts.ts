import type { Case, Plan } from '@bonewright/construct';
import type { PageSize } from '../paper/paper.ts';

/** What a theatre sheet is made of: the case, the plan, and the words of its title block. */
export interface TheatreSheetFacts {
  readonly patientCase: Case;
  readonly plan: Plan;
  readonly title: SheetTitle;
  /** What the practice's stock says was used; absent where nothing is known of it. */
  readonly used?: readonly UsedBatch[] | undefined;
}

/** One use from the stock: `P3` of the thing that the plan calls by `drawerId`, from that batch. */
export interface UsedBatch {
  /** `P3`, `IM pin`, `putty`. */
  readonly as: string;
  readonly drawerId: string;
  readonly batch: string;
}

export interface SheetTitle {
  /** The patient as the ward calls it, with its number: `Red squirrel 26-041`. */
  readonly patient: string;
  /** When it was weighed, in words; empty where unknown. */
  readonly weighed?: string | undefined;
  /** When the plan was made, in words. */
  readonly planned?: string | undefined;
  /** Where the lengths come from: `5 mm ball, ± 0.3 %, both films`. */
  readonly lengthsFrom: string;
  readonly isDemonstration?: boolean | undefined;
  /** Version of the program that made the plan. */
  readonly version: string;
  readonly size?: PageSize | undefined;
  readonly made: Date;
}

/** What else this patient was given or is about to be: doses signed for it and not voided. */
import type { DoseRoute } from '@bonewright/evidence';

export interface EarlierDose {
  readonly doseId: string;
  readonly drug: string;
  readonly route: DoseRoute;
  readonly site: string;
  /** As drawn, mg or U. */
  readonly amount: number;
  /** When it was given; null while it is signed and waits. */
  readonly givenAt: string | null;
}

/** What a dose is judged against besides itself. */
export interface DoseContext {
  readonly now: string;
  /** Minutes that the place's clocks are ahead of UTC. */
  readonly minutesEastOfUtc: number;
  readonly earlier: readonly EarlierDose[];
}

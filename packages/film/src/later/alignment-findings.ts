/** The alignment of a repaired bone in numbers against the limits of the evidence, before and after. */
import { entry } from '@bonewright/evidence';
import type { Measured } from '../model/trace.ts';
import type { ReductionFacts } from '../views/reduction.ts';
import { type Finding, figure, finding } from './finding.ts';

export interface AlignmentChange {
  readonly id: string;
  readonly before: Finding;
  readonly after: Finding;
  /** How much nearer to none, in the finding's unit; null where one is not measured. */
  readonly gained: number | null;
}

const ABOUT = 'distal fragment';

/** The bend that one view shows; positive medially in the craniocaudal view, cranially in the other. */
export function bendFinding(view: 'craniocaudal' | 'mediolateral', measured: Measured): Finding {
  const [id, there, back] =
    view === 'craniocaudal'
      ? (['frontal', 'medially', 'laterally'] as const)
      : (['sagittal', 'cranially', 'caudally'] as const);
  const words = `bent ${(measured.value ?? 0) > 0 ? there : back}`;
  return finding({ id, about: ABOUT, measured, unit: 'deg', limits: `alignment.${id}`, words });
}

/** Bend in both views, turn, contact and shortening, in that order. */
export function alignmentFindings(facts: ReductionFacts): readonly Finding[] {
  const [frontal, sagittal] = facts.angulationDeg;
  return [
    bendFinding('craniocaudal', frontal),
    bendFinding('mediolateral', sagittal),
    finding({
      id: 'rotation',
      about: ABOUT,
      measured: facts.rotationDeg,
      unit: 'deg',
      limits: 'alignment.rotation',
      words: 'turned about the bone, one way or the other',
    }),
    appositionFinding(facts, ABOUT),
    finding({
      id: 'shortening',
      about: ABOUT,
      measured: shorteningPercent(facts),
      unit: '%',
      limits: 'alignment.shortening',
      words:
        (facts.shorteningMm.value ?? 0) < 0 ? "of the bone's length drawn apart" : "of the bone's length shortened",
    }),
  ];
}

/** The same bone before and after, finding by finding. */
export function alignmentChange(before: ReductionFacts, after: ReductionFacts): readonly AlignmentChange[] {
  const now = alignmentFindings(after);
  return alignmentFindings(before).map((was, i) => {
    const is = now[i]!;
    const [a, b] = [was.measured.value, is.measured.value];
    const gained = a === null || b === null ? null : Math.abs(a) - Math.abs(b);
    // contact is better the more there is
    return {
      id: was.id,
      before: was,
      after: is,
      gained: was.id === 'apposition' && gained !== null ? -gained : gained,
    };
  });
}

/** Contact in the worse of the two views, per cent; there is a limit to look again, none that is published to refuse. */
function appositionFinding(facts: ReductionFacts, about: string): Finding {
  const limits = 'alignment.apposition';
  const watch = entry(limits).value;
  const views = facts.appositionShare;
  const worst = views.reduce((a, b) => ((b.value ?? -1) < (a.value ?? -1) ? b : a));
  const base = { id: 'apposition', about, unit: '%' as const, watch, stop: null, evidence: [limits] };
  if (worst.value === null) {
    return {
      ...base,
      measured: worst,
      verdict: 'unknown',
      because: `${about}: contact not measured: ${worst.why ?? ''}`,
    };
  }
  const measured = { value: 100 * worst.value, sd: 100 * worst.sd! };
  const because = `${about}: ${figure(measured.value, '%')} ± ${figure(measured.sd, '%')} of the width in contact in the worse view; looked at again below ${figure(watch, '%')}`;
  return { ...base, measured, verdict: measured.value < watch ? 'watch' : 'good', because };
}

function shorteningPercent({ shorteningMm: m, lengthMm }: ReductionFacts): Measured {
  if (m.value === null || lengthMm.value === null) return m;
  const share = 100 / lengthMm.value;
  return {
    value: share * m.value,
    sd: Math.hypot(share * m.sd!, (share * m.value * (lengthMm.sd ?? 0)) / lengthMm.value),
  };
}

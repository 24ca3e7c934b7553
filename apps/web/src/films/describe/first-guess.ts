/** What the description begins with until the surgeon says better: read off the joined bone, one bone's width where nothing was measured. */
import type { CaseState } from '@bonewright/casebook';
import { firstDescription } from '@bonewright/construct';
import type { JoinedBone } from '@bonewright/film';
import type { DescriptionDraft } from './description-draft.ts';

const tenth = (mm: number): string => String(Math.round(mm * 10) / 10);

/** The record where it says something, a guess where it does not. */
export function firstGuess(state: CaseState, bone: JoinedBone): DescriptionDraft {
  const fracture = state.fracture?.value;
  const keepOut = state.keepOut?.value;
  const soft = state.softTissueMm?.value;
  const first = firstDescription(bone.stations);
  const measured = bone.fracture;
  return {
    from: tenth(fracture?.fromMm ?? measured.fromMm),
    to: tenth(fracture?.toMm ?? measured.toMm),
    gap: tenth(fracture?.gapMm ?? first.gapMm),
    obliquity: tenth(fracture?.obliquityDeg ?? measured.obliquityDeg),
    comminuted: fracture?.comminuted ?? false,
    fissures: (fracture?.fissuresMm ?? []).map(([from, to]) => `${tenth(from)} to ${tenth(to)}`).join(', '),
    keepOutProximal: tenth(keepOut?.proximalMm ?? first.keepOutMm[0]),
    keepOutDistal: tenth(keepOut?.distalMm ?? first.keepOutMm[1]),
    softProximal: tenth(soft?.[0]?.depthMm ?? first.softTissueMm[0]),
    softDistal: tenth(soft?.at(-1)?.depthMm ?? first.softTissueMm[1]),
  };
}

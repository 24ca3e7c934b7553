/** What the description begins with until the surgeon says better: read off the joined bone, one bone's width where nothing was measured. */
import type { CaseState } from '@bonewright/casebook';
import type { JoinedBone } from '@bonewright/film';
import type { DescriptionDraft } from './description-draft.ts';

/** Half a millimetre of gap, as a fracture set by hand keeps. Common practice, no source. */
const GAP_MM = 0.5;

const tenth = (mm: number): string => String(Math.round(mm * 10) / 10);

/** The record where it says something, a guess where it does not. */
export function firstGuess(state: CaseState, bone: JoinedBone): DescriptionDraft {
  const fracture = state.fracture?.value;
  const keepOut = state.keepOut?.value;
  const soft = state.softTissueMm?.value;
  const [proximalWidth, distalWidth] = [widthOf(bone.stations[0]), widthOf(bone.stations.at(-1))];
  const measured = bone.fracture;
  return {
    from: tenth(fracture?.fromMm ?? measured.fromMm),
    to: tenth(fracture?.toMm ?? measured.toMm),
    gap: tenth(fracture?.gapMm ?? GAP_MM),
    obliquity: tenth(fracture?.obliquityDeg ?? measured.obliquityDeg),
    comminuted: fracture?.comminuted ?? false,
    fissures: (fracture?.fissuresMm ?? []).map(([from, to]) => `${tenth(from)} to ${tenth(to)}`).join(', '),
    keepOutProximal: tenth(keepOut?.proximalMm ?? proximalWidth),
    keepOutDistal: tenth(keepOut?.distalMm ?? distalWidth),
    softProximal: tenth(soft?.[0]?.depthMm ?? proximalWidth),
    softDistal: tenth(soft?.at(-1)?.depthMm ?? distalWidth),
  };
}

const widthOf = (station: JoinedBone['stations'][number] | undefined): number => Math.max(...(station?.outerMm ?? [0]));

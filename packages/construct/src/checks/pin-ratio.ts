/** Pin diameter over the bone's width at the hole: bones under a frame break through their pin holes. */
import { value } from '@bonewright/evidence';
import type { Check } from '../model/plan.ts';
import type { CheckContext } from './context.ts';
import { judged } from './limits.ts';
import { inPercent, pinName } from './words.ts';

export function pinRatio(context: CheckContext): Check[] {
  const watchId = hasThinWalls(context) ? 'rule.pin-ratio.watch-thin-wall' : 'rule.pin-ratio.watch';
  const limits = { worse: 'above', watch: value(watchId), stop: value('rule.pin-ratio.stop') } as const;
  return context.pins.map(({ index, drawer, boneWidthMm }) => {
    const percent = (100 * drawer.diameterMm) / boneWidthMm;
    return judged({
      id: 'pin-ratio',
      pin: index + 1,
      value: percent,
      unit: '%',
      limits,
      shown: inPercent,
      says: `${pinName(index)} is ${shownBeyond(percent, limits.watch)} of the bone's width`,
      evidence: [watchId, 'rule.pin-ratio.stop', 'rule.pin-ratio.target', 'rule.pin-track-fractures'],
    });
  });
}

/** 25.2 is not written as the 25 that it is over. */
const shownBeyond = (percent: number, limit: number): string =>
  Math.round(percent) === limit && percent !== limit ? `${percent.toFixed(1)} %` : inPercent(percent);

/** The stricter limit was read for rabbits and holds for birds by their thin walls. */
export const hasThinWalls = ({ boreClass, case: { patient } }: CheckContext): boolean =>
  boreClass === 'bird' || /rabbit/i.test(patient.species);

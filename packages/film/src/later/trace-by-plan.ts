/** What a surgeon would click on a later film, taken from the plan laid over it: both parts, fracture, ends of the bone. */
import type { Pixel, SegmentClicks } from '../model/trace.ts';
import { onFilm, type Placing, type PlanPoint } from './place-plan.ts';
import type { LandmarkFigure } from './plan-landmarks.ts';

export interface ClicksByPlan {
  readonly segments: readonly [SegmentClicks, SegmentClicks];
  readonly fractureLine: readonly [Pixel, Pixel];
  readonly boneEnds: readonly [Pixel, Pixel];
}

/** How far from a joint and from the fracture the walls are read, in widths of the bone. */
const AWAY_WIDTHS = 0.55;
/** The line of the fracture runs past both walls, as a hand would draw it. */
const PAST_WIDTHS = 0.35;

/** Null where the plan has not two fragments. */
export function clicksByPlan(placing: Placing, figure: LandmarkFigure): ClicksByPlan | null {
  const [proximal, distal] = figure.fragments;
  if (!proximal || !distal) return null;
  const at = (point: PlanPoint): Pixel => onFilm(placing, point);
  const brokenProximal = [proximal.outer[0].at(-1)!, proximal.outer[1].at(-1)!] as const;
  const brokenDistal = [distal.outer[0][0]!, distal.outer[1][0]!] as const;
  const widthMm = brokenProximal[1][1] - brokenProximal[0][1];
  const away = AWAY_WIDTHS * widthMm;
  const line = (side: 0 | 1): PlanPoint => {
    const [s, w] = mean(brokenProximal[side], brokenDistal[side]);
    return [s, w + (side === 0 ? -1 : 1) * PAST_WIDTHS * widthMm];
  };
  const lastMm = brokenProximal[0][0];
  const firstMm = brokenDistal[0][0];
  return {
    segments: [
      { name: 'proximal', from: at(middleAt(proximal, away)), to: at(middleAt(proximal, lastMm - away)) },
      {
        name: 'distal',
        from: at(middleAt(distal, firstMm + away)),
        to: at(middleAt(distal, figure.lengthMm - away)),
      },
    ],
    fractureLine: [at(line(0)), at(line(1))],
    boneEnds: [at([0, 0]), at([figure.lengthMm, 0])],
  };
}

const mean = (a: PlanPoint, b: PlanPoint): PlanPoint => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** Half way between the walls at the drawn place nearest to that s. */
function middleAt({ outer: [low, high] }: LandmarkFigure['fragments'][number], sMm: number): PlanPoint {
  const nearest = low.reduce((best, [s], i) => (Math.abs(s - sMm) < Math.abs(low[best]![0] - sMm) ? i : best), 0);
  return mean(low[nearest]!, high[nearest]!);
}

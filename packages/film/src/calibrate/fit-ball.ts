/**
 * Fits a steel ball's shadow to a fraction of a pixel: an ellipse whose rim follows the beam through a sphere
 * (chord, attenuation, scatter floor), blurred. On a LOG film the gain is fitted too, so that the blur acts on the beam.
 */
import { value } from '@bonewright/evidence';
import type { GreyImage } from '../model/film.ts';
import type { BallFit, Pixel } from '../model/trace.ts';
import { type Attenuation, attenuation } from '../trace/attenuation.ts';
import type { BlurPrior } from '../trace/prior.ts';
import { findBall, type NoBall, type RoughBall } from './find-ball.ts';
import { fitRim, type RimFit } from './fit-rim.ts';
import { RIM, type Ring, ringPixels, X } from './rim.ts';

/** The ball's ellipse and how sure its short axis is. */
export interface FittedBall extends BallFit {
  readonly shortAxisSdPx: number;
  /** What its rim tells of the film's blur. */
  readonly blur: BlurPrior;
}

/** The ball near that point; or why the film does not say. A ratio above 1.05, a cut or a gap in the rim is refused. */
export function fitBall(image: GreyImage, near: Pixel, diameterMm?: number): FittedBall | NoBall {
  return fitBallIn(attenuation(image), near, diameterMm);
}

/** As `fitBall`, on a film already turned into attenuation; `diameterMm` makes the sphere's rim physical. */
export function fitBallIn(film: Attenuation, near: Pixel, diameterMm: number | undefined): FittedBall | NoBall {
  const rough = findBall(film, near);
  if ('why' in rough) return rough;
  const ring = ringPixels(film, rough);
  const fit = fitRim(ring, film, rough, diameterMm);
  if (!fit) return { why: 'the rim of the ball could not be fitted' };
  const { x } = fit;
  const a = x[X.radius]!;
  // radius along direction t: a (1 + p cos 2t + q sin 2t)
  const e = Math.hypot(x[X.p]!, x[X.q]!);
  const ratio = (1 + e) / (1 - e);
  if (ratio > value('imaging.ball.largest-axis-ratio')) {
    return {
      why: `the ball's shadow is stretched ${ratio.toFixed(2)} to 1; it is not round, or lies too far off the beam`,
    };
  }
  const gap = rimGap(ring, fit, rough);
  if (gap) return { why: gap };
  return {
    centre: [x[X.col]!, x[X.row]!],
    shortAxisPx: 2 * a * (1 - e),
    longAxisPx: 2 * a * (1 + e),
    angleDeg: (Math.atan2(x[X.q]!, x[X.p]!) * 90) / Math.PI,
    shortAxisSdPx: 2 * fit.sdOfRadius,
    blur: blurOf(fit),
  };
}

/** A pixel's own box is part of the rim's blur and no part of a cell's. */
const PIXEL_BOX = 1 / 12;
/** How far bone and ball may differ in blur (height, focal spot), beyond the rim's own sd. */
const BLUR_DIFFERENCE = { log: 0.06, tail: 0.015 };

function blurOf({ x }: RimFit): BlurPrior {
  const square = Math.exp(2 * x[X.logBlur]!) - PIXEL_BOX;
  return {
    log: Math.log(Math.max(0.1, square)) / 2,
    logSd: BLUR_DIFFERENCE.log,
    tail: x[X.tail]!,
    tailSd: BLUR_DIFFERENCE.tail,
  };
}

/** A stretch of the rim without a shadow's edge where the ellipse says it is. */
function rimGap(ring: Ring, fit: RimFit, rough: RoughBall): string | null {
  const bad = new Float64Array(RIM.sectors);
  const count = new Float64Array(RIM.sectors);
  for (let i = 0; i < ring.v.length; i++) {
    const dx = ring.col[i]! - fit.x[X.col]!;
    const dy = ring.row[i]! - fit.x[X.row]!;
    if (Math.abs(Math.hypot(dx, dy) - fit.x[X.radius]!) > 2.5) continue;
    const k = Math.floor(((Math.atan2(dy, dx) + Math.PI) / (2 * Math.PI)) * RIM.sectors) % RIM.sectors;
    bad[k]! += fit.residual[i]!;
    count[k]! += 1;
  }
  const limit = 0.12 * (rough.inside - rough.outside);
  for (let k = 0; k < RIM.sectors; k++) {
    if (count[k]! < 3) return "the ball is cut by the film's edge; its size cannot be read";
    if (Math.abs(bad[k]! / count[k]!) > limit)
      return 'the rim of the ball has a gap or something lies over it; its size cannot be read';
  }
  return null;
}

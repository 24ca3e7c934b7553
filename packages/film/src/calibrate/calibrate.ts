/** Millimetres per pixel at the bone, with its standard deviation and what it rests on. */
import { value } from '@bonewright/evidence';
import type { GreyImage } from '../model/film.ts';
import type { BallFit, Calibration, Measured } from '../model/trace.ts';
import { type Attenuation, attenuation } from '../trace/attenuation.ts';
import { type BlurPrior, USUAL_BLUR } from '../trace/prior.ts';
import { fitBallIn } from './fit-ball.ts';

export interface Scale {
  readonly mmPerPixel: Measured;
  readonly ball: BallFit | null;
  readonly ballHeightErrorPercent: number | null;
}

/** The scale at the bone; its value is null, with the reason, where the film does not give it. */
export function calibrate(image: GreyImage, calibration: Calibration): Scale {
  return calibrateIn(attenuation(image), calibration).scale;
}

/** The scale, and what a ball's rim tells of the film's blur. */
export function calibrateIn(film: Attenuation, calibration: Calibration): { scale: Scale; blur: BlurPrior } {
  if (calibration.kind === 'ball') return fromBall(film, calibration);
  return { scale: withoutBall(calibration), blur: USUAL_BLUR };
}

function withoutBall(calibration: Exclude<Calibration, { kind: 'ball' }>): Scale {
  switch (calibration.kind) {
    case 'scale':
      return plain(calibration.mmPerPixel, (calibration.sdPercent ?? value('imaging.scale.usual-sd-percent')) / 100);
    case 'implant':
      return fromImplant(calibration);
    case 'geometry': {
      const { sourceToDetectorMm: sid, objectToDetectorMm: height, detectorPitchMm } = calibration;
      return plain((detectorPitchMm * (sid - height)) / sid, value('imaging.height.sd') / (sid - height));
    }
  }
}

function plain(mmPerPixel: number, relativeSd: number): Scale {
  return { mmPerPixel: { value: mmPerPixel, sd: mmPerPixel * relativeSd }, ball: null, ballHeightErrorPercent: null };
}

/** It lies in the bone: no difference in height is left. The sd is that of the two clicks. */
function fromImplant({ diameterMm, across: [a, b] }: Extract<Calibration, { kind: 'implant' }>): Scale {
  const px = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (px === 0) {
    const why = 'both edges of the implant were clicked at one place';
    return { mmPerPixel: { value: null, sd: null, why }, ball: null, ballHeightErrorPercent: null };
  }
  return plain(diameterMm / px, (Math.SQRT2 * value('measure.click.sd')) / px);
}

/** Short axis of a sphere's shadow to its diameter; the difference in height is taken out where it is given. */
function fromBall(film: Attenuation, c: Extract<Calibration, { kind: 'ball' }>): { scale: Scale; blur: BlurPrior } {
  const off = value('imaging.ball.height-doubt');
  const sid = c.sourceToDetectorMm;
  const sod = (sid ?? value('imaging.source.usual-distance')) - (c.objectToDetectorMm ?? 0);
  const ballHeightErrorPercent = (100 * off) / sod;
  const fit = fitBallIn(film, c.near, c.diameterMm);
  if ('why' in fit) {
    const mmPerPixel = { value: null, sd: null, why: fit.why };
    return { scale: { mmPerPixel, ball: null, ballHeightErrorPercent }, blur: USUAL_BLUR };
  }
  const atBall = c.diameterMm / fit.shortAxisPx;
  const heights =
    sid !== undefined && c.ballToDetectorMm !== undefined && c.objectToDetectorMm !== undefined
      ? (sid - c.objectToDetectorMm) / (sid - c.ballToDetectorMm)
      : 1;
  // a sphere's shadow is wider than its middle section's by 1 / sqrt(1 - (r / distance)^2)
  const sphere = 1 / Math.sqrt(1 - (c.diameterMm / 2 / (sod || 1)) ** 2);
  const mm = atBall * heights * sphere;
  const relative = Math.hypot(
    fit.shortAxisSdPx / fit.shortAxisPx,
    value('imaging.ball.rim-sd-px') / fit.shortAxisPx,
    value('imaging.ball.height-sd') / sod,
  );
  const { shortAxisSdPx: _, blur, ...ball } = fit;
  return { scale: { mmPerPixel: { value: mm, sd: mm * relative }, ball, ballHeightErrorPercent }, blur };
}

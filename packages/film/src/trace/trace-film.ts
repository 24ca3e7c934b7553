/** A film and rough clicks to calibrated stations of each fragment, with standard deviations that are meant to be right. */
import { value } from '@bonewright/evidence';
import { calibrateIn } from '../calibrate/calibrate.ts';
import type { GreyImage } from '../model/film.ts';
import type { Measured, Trace, TracedSegment, TraceRequest } from '../model/trace.ts';
import { alignment } from './alignment.ts';
import { attenuation } from './attenuation.ts';
import { lineFrame } from './frame.ts';
import { stationsOf } from './stations.ts';
import { type FittedSegment, fitSegment, type NoBone } from './trace-segment.ts';

/**
 * Traces each segment of `request` on the film. Lengths in mm at the bone, points in pixels.
 * Where the film does not say, the value is null and `why` says so; without a scale there are no stations.
 */
export function traceFilm(image: GreyImage, request: TraceRequest): Trace {
  const film = attenuation(image);
  const { scale, blur } = calibrateIn(film, request.calibration);
  const fits = request.segments.map((clicks) => fitSegment(film, clicks, blur));
  const segments = fits.map((fit, i) => traced(fit, request.segments[i]!, scale.mmPerPixel));
  return { ...scale, segments, ...alignment(fits, scale.mmPerPixel) };
}

function traced(
  fit: FittedSegment | NoBone,
  clicks: TraceRequest['segments'][number],
  mmPerPixel: Measured,
): TracedSegment {
  const { name } = clicks;
  if ('why' in fit)
    return { name, axis: { from: clicks.from, to: clicks.to }, ...without(fit.why, clicks, mmPerPixel) };
  const axis = { from: fit.frame.from, to: fit.frame.to };
  if (mmPerPixel.value === null || mmPerPixel.sd === null) {
    return { name, axis, stations: [], notes: [`no lengths: ${mmPerPixel.why ?? 'no scale'}`] };
  }
  return { name, axis, ...stationsOf(fit, mmPerPixel.value, mmPerPixel.sd / mmPerPixel.value) };
}

/** Stations that say why they say nothing. */
function without(
  why: string,
  clicks: TraceRequest['segments'][number],
  mmPerPixel: Measured,
): Pick<TracedSegment, 'stations' | 'notes'> {
  if (mmPerPixel.value === null) return { stations: [], notes: [why] };
  const frame = lineFrame(clicks.from, clicks.to);
  const lengthMm = frame.lengthPx * mmPerPixel.value;
  const count = Math.max(1, Math.ceil(lengthMm / value('imaging.station.spacing')));
  const none: Measured = { value: null, sd: null, why };
  const stations = Array.from({ length: count + 1 }, (_, i) => {
    const s = (i / count) * frame.lengthPx;
    return {
      sMm: (i / count) * lengthMm,
      centre: [frame.from[0] + s * frame.along[0], frame.from[1] + s * frame.along[1]] as const,
      outerMm: none,
      canalMm: none,
      walls: { outer: null, canal: null },
    };
  });
  return { stations, notes: [`0.0 to ${lengthMm.toFixed(1)} mm: ${why}`] };
}

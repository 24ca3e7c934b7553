/** Stations of a fitted fragment: both diameters with their sd, or why there is none. */
import { value } from '@bonewright/evidence';
import type { Measured, TracedSegment, TraceStation } from '../model/trace.ts';
import { pointAt } from './frame.ts';
import { blurOf, type Part, partAt, weightsAt } from './layout.ts';
import type { FittedSegment } from './trace-segment.ts';

/** A diameter as fitted, in pixels, before it is judged. */
interface Reading {
  readonly px: number;
  readonly sdPx: number;
}

export function stationsOf(
  fit: FittedSegment,
  mmPerPixel: number,
  scaleSd: number,
): Pick<TracedSegment, 'stations' | 'notes'> {
  const lengthMm = fit.frame.lengthPx * mmPerPixel;
  const count = Math.max(1, Math.ceil(lengthMm / value('imaging.station.spacing')));
  const stations = Array.from({ length: count + 1 }, (_, i) =>
    stationAt(fit, (i / count) * fit.frame.lengthPx, (i / count) * lengthMm, mmPerPixel, scaleSd),
  );
  const doubt =
    fit.chi > value('imaging.trace.doubt')
      ? ['the shadow fits a single bone badly: look at the walls drawn before trusting them']
      : [];
  return { stations, notes: [...doubt, ...notesOf(stations)] };
}

function stationAt(fit: FittedSegment, s: number, sMm: number, mmPerPixel: number, scaleSd: number): TraceStation {
  const { model } = fit.fit;
  const co = partAt(model, 'co', s);
  const ci = partAt(model, 'ci', s);
  const factor = fit.honesty.sdFactor * fit.honesty.at(s) * thinness(fit, s);
  const outer: Reading = { px: 2 * partAt(model, 'ao', s), sdPx: 2 * factor * sdOf(fit, 'ao', s) };
  const canal: Reading = { px: 2 * partAt(model, 'ai', s), sdPx: 2 * factor * sdOf(fit, 'ai', s) };
  const blocked = fit.blockedAt(s, mmPerPixel);
  const outerWhy =
    blocked ??
    fit.lostAt(s) ??
    (outer.sdPx > value('imaging.trace.outer-limit') * outer.px ? 'the outer edges do not stand out here' : null);
  const canalWhy =
    outerWhy ??
    (canal.sdPx > value('imaging.trace.canal-limit') * canal.px ? 'the canal does not stand out here' : null);
  const measured = (r: Reading, why: string | null): Measured =>
    why === null
      ? { value: r.px * mmPerPixel, sd: Math.hypot(inflated(r.sdPx), scaleSd * r.px) * mmPerPixel }
      : { value: null, sd: null, why };
  const pair = (c: number, r: Reading) =>
    [pointAt(fit.frame, s, c - r.px / 2), pointAt(fit.frame, s, c + r.px / 2)] as const;
  return {
    sMm,
    centre: pointAt(fit.frame, s, co),
    outerMm: measured(outer, outerWhy),
    canalMm: measured(canal, canalWhy),
    walls: { outer: outerWhy === null ? pair(co, outer) : null, canal: canalWhy === null ? pair(ci, canal) : null },
  };
}

/**
 * A wall hardly wider than the blur looks the same thin and dense as thick and light: the fit's own sd, taken where it
 * ended on that ridge, is too small.
 */
function thinness(fit: FittedSegment, s: number): number {
  const { model } = fit.fit;
  const walls = (partAt(model, 'ao', s) - partAt(model, 'ai', s)) / blurOf(model);
  return Math.min(LARGEST_THINNESS, Math.max(1, value('imaging.trace.thin-wall') / walls));
}
const LARGEST_THINNESS = 3;

/** What the fit says of itself, widened by what random projected films showed it to leave out. */
const inflated = (sdPx: number): number =>
  Math.hypot(value('imaging.trace.sd-factor') * sdPx, value('imaging.trace.sd-floor'));

/** Stretches without a value, by reason. */
function notesOf(stations: readonly TraceStation[]): string[] {
  const notes: string[] = [];
  for (const part of ['outerMm', 'canalMm'] as const) {
    let from: number | null = null;
    for (let i = 0; i <= stations.length; i++) {
      const why = stations[i]?.[part].why;
      const before = stations[i - 1]?.[part].why;
      if (why === before && i > 0) continue;
      if (from !== null && before !== undefined) {
        const note = `${from.toFixed(1)} to ${stations[i - 1]!.sMm.toFixed(1)} mm: ${before}`;
        if (!notes.includes(note)) notes.push(note);
      }
      from = why === undefined ? null : (stations[i]?.sMm ?? null);
    }
  }
  return notes;
}

/** Standard deviation of a part at s, by the fit's own covariance. */
function sdOf(fit: FittedSegment, part: Part, s: number): number {
  const at = weightsAt(fit.fit.model, part, s);
  return Math.sqrt(fit.fit.covariance(at, at));
}

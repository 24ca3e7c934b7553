/** A projected film with metal over the bone: what the trace leaves out, the hand puts back. */
import { describe, expect, test } from 'vitest';
import { CAMERA, filmOf, MAGNIFIED, PINS, place, REPAIRED } from '../later/drawn-repair.ts';
import type { Pixel } from '../model/trace.ts';
import { outerAt } from '../projector/long-bone.ts';
import { shadowOf } from '../projector/project.ts';
import { traceFilm } from '../trace/trace-film.ts';
import { correctedTrace } from './corrected-trace.ts';
import type { WallSide } from './correction.ts';

/** True half-width and middle across at z along the bone, of an ellipse turned by `turn`. */
function silhouette(z: number): { readonly middle: number; readonly half: number } {
  const { cx, cy, a, b } = outerAt(REPAIRED, z);
  const [cos, sin] = [Math.cos(REPAIRED.turn), Math.sin(REPAIRED.turn)];
  return { middle: cos * cx - sin * cy, half: Math.hypot(a * cos, b * sin) };
}

const along = (s: number) => shadowOf(CAMERA, place(silhouette(s).middle, s));
const wallAt = (z: number, side: 1 | -1): Pixel => {
  const { middle, half } = silhouette(z);
  const [c, r] = shadowOf(CAMERA, place(middle + side * half, z));
  return [Math.round(c), Math.round(r)];
};

describe('a trace through a pin', () => {
  const trace = traceFilm(filmOf(PINS), {
    calibration: { kind: 'scale', mmPerPixel: CAMERA.pitchMm / MAGNIFIED, sdPercent: 0.3 },
    segments: [
      { name: 'proximal', from: along(-16), to: along(-2) },
      { name: 'distal', from: along(2), to: along(15) },
    ],
  });
  const [proximal] = trace.segments;
  const blocked = proximal!.stations.filter((s) => s.outerMm.why === 'metal lies over the bone here');

  test('leaves stations out where metal lies', () => {
    expect(blocked.length).toBeGreaterThan(2);
  });

  test('edges clicked there to the pixel give the true width within three sds', () => {
    const station = blocked[blocked.length >> 1]!;
    const z = -16 + station.sMm;
    // the axis runs down the film: its left side (first of the walls) is +column
    const side = (name: WallSide, sign: 1 | -1) => ({
      segment: 'proximal',
      sMm: station.sMm,
      side: name,
      place: wallAt(z, sign),
    });
    const now = correctedTrace(trace, [side('outer-left', 1), side('outer-right', -1)]);
    const width = now.segments[0]!.stations.find((s) => s.sMm === station.sMm)!.outerMm;
    expect(Math.abs(width.value! - 2 * silhouette(z).half)).toBeLessThan(3 * width.sd!);
    // two clicks within a pixel of 0.098 mm: p / sqrt(6)
    expect(width.sd!).toBeLessThan(0.05);
  });
});

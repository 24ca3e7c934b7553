/** The trace against the exact truth of films of random bones, drawn by the projector; seeds the trace was not tuned on. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { Measured, Trace } from '../model/trace.ts';
import { type RandomFilm, randomFilm } from '../projector/random-film.ts';
import { traceFilm } from './trace-film.ts';

const SEEDS = [9001, 9002, 9003, 9004, 9005, 9006];
/** z below which a 90 % interval holds its truth. */
const NINETY = 1.645;

interface Judged {
  readonly part: 'outerMm' | 'canalMm';
  readonly error: number;
  readonly share: number;
  readonly z: number;
}

let films: { readonly film: RandomFilm; readonly trace: Trace }[] = [];

beforeAll(() => {
  films = SEEDS.map((seed) => {
    const film = randomFilm(seed);
    return { film, trace: traceFilm(film.image, film.request) };
  });
}, 120_000);

const rms = (values: readonly number[]): number => Math.sqrt(values.reduce((s, v) => s + v * v, 0) / values.length);

function judge({ film, trace }: (typeof films)[number]): Judged[] {
  return trace.segments.flatMap((segment, k) =>
    segment.stations.flatMap((station) => {
      const near = film.truth.segments[k]!.stations.filter(
        (t) => t.excluded === null && Math.abs(t.sMm - station.sMm) < 0.3,
      );
      const truth = near.toSorted((a, b) => Math.abs(a.sMm - station.sMm) - Math.abs(b.sMm - station.sMm))[0];
      if (!truth) return [];
      return (['outerMm', 'canalMm'] as const).flatMap((part) => against(part, station[part], truth[part]));
    }),
  );
}

function against(part: Judged['part'], { value, sd }: Measured, truth: number | null): Judged[] {
  if (value === null || sd === null || truth === null) return [];
  const error = value - truth;
  return [{ part, error, share: error / truth, z: Math.abs(error) / sd }];
}

describe('six random films', () => {
  // The limits are those asked of the tracer: the larger of two per cent and 0.05 mm outside, five and 0.10 in the canal.
  test.each([
    ['outerMm', 0.02, 0.05],
    ['canalMm', 0.05, 0.1],
  ] as const)('%s is within its limit, by root mean square', (part, share, mm) => {
    const judged = films.flatMap(judge).filter((j) => j.part === part);
    expect(judged.length).toBeGreaterThan(100);
    const isNear = rms(judged.map((j) => j.share)) <= share || rms(judged.map((j) => j.error)) <= mm;
    expect(isNear).toBe(true);
  });

  test('90 % intervals hold most truths, and are not so wide that they hold all', () => {
    const judged = films.flatMap(judge);
    const held = judged.filter(({ z }) => z <= NINETY).length / judged.length;
    // Stations of one film share their errors: six films tell the share to some ten in a hundred.
    expect(held).toBeGreaterThan(0.75);
    expect(held).toBeLessThan(1);
  });

  test('angulation within 1 degree, translation within 0.35 mm as the two axes end at different places, signs included', () => {
    for (const { film, trace } of films) {
      expect(Math.abs((trace.angulationDeg.value ?? Number.NaN) - film.truth.angulationDeg)).toBeLessThan(1);
      expect(Math.abs((trace.translationMm.value ?? Number.NaN) - film.truth.translationMm)).toBeLessThan(0.35);
    }
  });
});

test('a film of noise gives no bone: nulls, each with its reason', () => {
  const { image, request } = films[0]!.film;
  const pixels = Uint16Array.from(image.pixels, (_, i) => 2000 + ((i * 2654435761) % 97));
  const calibration = { kind: 'scale', mmPerPixel: 0.1, sdPercent: 0.5 } as const;
  const trace = traceFilm({ ...image, pixels }, { ...request, calibration });
  expect(trace.angulationDeg.value).toBeNull();
  expect(trace.angulationDeg.why).toBeTruthy();
  for (const station of trace.segments.flatMap((s) => s.stations)) {
    expect(station.outerMm.value).toBeNull();
    expect(station.outerMm.why).toBeTruthy();
  }
});

test('clicks that are off by a fifth of the width give the same walls, within their own spread', () => {
  const { film, trace } = films[1]!;
  const [proximal, distal] = film.request.segments;
  const shifted = [proximal!, distal!].map((s) => ({
    ...s,
    from: [s.from[0] + 2, s.from[1]] as const,
    to: [s.to[0] - 2, s.to[1]] as const,
  }));
  const again = traceFilm(film.image, { ...film.request, segments: shifted });
  const middle = (t: Trace) => t.segments[0]!.stations[Math.floor(t.segments[0]!.stations.length / 2)]!.outerMm;
  const [a, b] = [middle(trace), middle(again)];
  expect(Math.abs(a.value! - b.value!)).toBeLessThan(3 * Math.hypot(a.sd!, b.sd!));
});

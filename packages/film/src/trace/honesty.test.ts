/** Interval honesty: stations drawn at random from small random films, and how many truths their 90 % intervals hold. */
import { expect, test } from 'vitest';
import type { TraceStation } from '../model/trace.ts';
import { seededRandom } from '../projector/random.ts';
import { randomFilm } from '../projector/random-film.ts';
import type { TrueStation } from '../projector/truth.ts';
import { traceFilm } from './trace-film.ts';

const STATIONS = 500;
const FROM_EACH = 20;
const FIRST_SEED = 40_001;
/** Small bones, so that a film takes a fraction of a second. */
const WIDTHS_PX = [18, 30] as const;
/** z below which a 90 % interval holds its truth. */
const NINETY = 1.645;

/** Whether the interval of each diameter holds its truth, for stations drawn from one fragment of a random film. */
function held(seed: number): boolean[] {
  const { image, request, truth } = randomFilm(seed, WIDTHS_PX);
  if (truth.segments[0].stations.every(({ excluded }) => excluded !== null)) return [];
  const segments = request.segments.slice(0, 1);
  const [traced] = traceFilm(image, { ...request, segments }).segments;
  const random = seededRandom(seed);
  const answers = truth.segments[0].stations.flatMap((station) => {
    const near = station.excluded === null && traced && nearest(traced.stations, station);
    return near ? [{ near, station, draw: random.uniform() }] : [];
  });
  return answers
    .toSorted((a, b) => a.draw - b.draw)
    .slice(0, FROM_EACH)
    .flatMap(({ near, station }) =>
      (['outerMm', 'canalMm'] as const).flatMap((part) => {
        const { value, sd } = near[part];
        return value === null || sd === null ? [] : [Math.abs(value - station[part]) <= NINETY * sd];
      }),
    );
}

/** The traced station that lies at the true one to a quarter of a millimetre: a diameter changes by less than its sd over that. */
function nearest(stations: readonly TraceStation[], { sMm }: TrueStation): TraceStation | undefined {
  const near = stations.filter((s) => Math.abs(s.sMm - sMm) <= 0.25);
  return near.toSorted((a, b) => Math.abs(a.sMm - sMm) - Math.abs(b.sMm - sMm))[0];
}

// Asked: 88 to 92 in 100. Stations of one fragment share their errors, so that 500 of them from some 30 fragments tell the
// share to about three in a hundred; the bench measures it on many more.
test(`${STATIONS} stations of random films: the 90 % intervals hold nine truths in ten`, { timeout: 120_000 }, () => {
  const all: boolean[] = [];
  for (let seed = FIRST_SEED; all.length < 2 * STATIONS; seed++) all.push(...held(seed));
  const share = all.filter(Boolean).length / all.length;
  expect(share).toBeGreaterThan(0.87);
  expect(share).toBeLessThan(0.93);
});

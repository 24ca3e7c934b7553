/** Traces random projected films and lays the answers beside their exact truth: how far off, and how honest about it. */
import { type Pixel, randomFilm, type Trace, traceFilm } from '@bonewright/film';
import type { Row } from './row.ts';

/** One reported diameter at a station where the truth is known. */
interface Judged {
  readonly part: 'outerMm' | 'canalMm';
  readonly error: number;
  readonly share: number;
  readonly z: number;
}

type Truth = ReturnType<typeof randomFilm>['truth'];

/** z below which a 90 % interval holds its truth. */
const NINETY = 1.645;
/** A true station counts as measured if a value lies this near, mm. */
const REACH_MM = 0.75;

/** Traces `count` random films (seeds 1 and up). */
export function benchTrace(count = 60): Row[] {
  const judged: Judged[] = [];
  const scale: number[] = [];
  const angle: { error: number; z: number }[] = [];
  const shift: { error: number; z: number }[] = [];
  const times: number[] = [];
  let asked = 0;
  let missed = 0;
  for (let seed = 1; seed <= count; seed++) {
    const { image, request, truth } = randomFilm(seed);
    const start = performance.now();
    const trace = traceFilm(image, request);
    times.push(performance.now() - start);
    judged.push(...judge(trace, truth));
    const gaps = unmeasured(trace, truth);
    asked += gaps.asked;
    missed += gaps.missed;
    const { value, sd } = trace.angulationDeg;
    if (value !== null && sd !== null) {
      const error = value - truth.angulationDeg;
      angle.push({ error, z: error / sd });
    }
    const moved = trace.translationMm;
    if (moved.value !== null && moved.sd !== null) {
      const error = moved.value - translationAt(truth, trace.segments[0]!.axis.to);
      shift.push({ error, z: error / moved.sd });
    }
    const mm = trace.mmPerPixel.value;
    if (mm !== null && request.calibration.kind === 'ball') scale.push(mm / truth.mmPerPixel - 1);
  }
  return [
    ...partRows(
      'outer diameter',
      judged.filter((j) => j.part === 'outerMm'),
    ),
    ...partRows(
      'canal diameter',
      judged.filter((j) => j.part === 'canalMm'),
    ),
    {
      what: 'truths inside the 90 % interval, both diameters',
      figure: 100 * covered(judged),
      unit: '%',
      goal: '88 to 92',
    },
    { what: 'true stations without a value', figure: (100 * missed) / asked, unit: '%', goal: 'under 10' },
    { what: 'angulation, RMS error', figure: rms(angle.map((a) => a.error)), unit: 'deg', goal: 'under 1' },
    { what: 'angulation, truths inside the 90 % interval', figure: 100 * covered(angle), unit: '%', goal: '88 to 92' },
    { what: 'translation, RMS error', figure: rms(shift.map((a) => a.error)), unit: 'mm', goal: 'under 0.15' },
    { what: 'translation, truths inside the 90 % interval', figure: 100 * covered(shift), unit: '%', goal: '88 to 92' },
    { what: 'scale from a ball, RMS error', figure: 100 * rms(scale), unit: '%', goal: 'under 0.7' },
    { what: 'one film, median', figure: quantile(times, 0.5), unit: 'ms', goal: 'under 1500' },
    { what: 'one film, slowest', figure: quantile(times, 1), unit: 'ms' },
  ];
}

function partRows(name: string, judged: readonly Judged[]): Row[] {
  return [
    { what: `${name}, stations compared`, figure: judged.length, unit: '' },
    {
      what: `${name}, RMS error`,
      figure: 100 * rms(judged.map((j) => j.share)),
      unit: '%',
      goal: name.startsWith('outer') ? 'under 2' : 'under 5',
    },
    {
      what: `${name}, median error`,
      figure:
        100 *
        quantile(
          judged.map((j) => Math.abs(j.share)),
          0.5,
        ),
      unit: '%',
    },
    { what: `${name}, truths inside the 90 % interval`, figure: 100 * covered(judged), unit: '%', goal: '88 to 92' },
    {
      what: `${name}, error over sd, 99 of 100 below`,
      figure: quantile(
        judged.map((j) => Math.abs(j.z)),
        0.99,
      ),
      unit: '',
    },
  ];
}

/** Station and value pairs where the truth is asked for, by position along the true axis. */
function judge(trace: Trace, truth: Truth): Judged[] {
  return truth.segments.flatMap((segment, i) => {
    const along = alongAxis(segment.axis.from, segment.axis.to, truth.mmPerPixel);
    return (trace.segments[i]?.stations ?? []).flatMap((station) => {
      const s = along(station.centre);
      const k = segment.stations.findIndex((q) => q.sMm > s);
      const [a, b] = [segment.stations[k - 1], segment.stations[k]];
      if (!a || !b || a.excluded || b.excluded) return [];
      const u = (s - a.sMm) / (b.sMm - a.sMm);
      return (['outerMm', 'canalMm'] as const).flatMap((part) => {
        const { value, sd } = station[part];
        if (value === null || sd === null) return [];
        const truly = a[part] * (1 - u) + b[part] * u;
        return [{ part, error: value - truly, share: value / truly - 1, z: (value - truly) / sd }];
      });
    });
  });
}

function unmeasured(trace: Trace, truth: Truth): { asked: number; missed: number } {
  let asked = 0;
  let missed = 0;
  for (const [i, segment] of truth.segments.entries()) {
    const along = alongAxis(segment.axis.from, segment.axis.to, truth.mmPerPixel);
    const stations = (trace.segments[i]?.stations ?? []).map((s) => ({ ...s, s: along(s.centre) }));
    for (const q of segment.stations.filter((s) => !s.excluded)) {
      for (const part of ['outerMm', 'canalMm'] as const) {
        asked += 1;
        if (!stations.some((s) => Math.abs(s.s - q.sMm) <= REACH_MM && s[part].value !== null)) missed += 1;
      }
    }
  }
  return { asked, missed };
}

/** The true translation where the traced proximal axis ends: the axes are not parallel, so it depends on the place. */
function translationAt({ segments, mmPerPixel, angulationDeg }: Truth, end: Pixel): number {
  const [proximal, distal] = segments;
  const along = alongAxis(proximal.axis.from, proximal.axis.to, 1);
  const { from, to } = proximal.axis;
  const length = along(to);
  const [dc, dr] = [distal.axis.from[0] - from[0], distal.axis.from[1] - from[1]];
  const across = (dr * (to[0] - from[0]) - dc * (to[1] - from[1])) / length;
  const back = along(end) - along(distal.axis.from);
  return (across + back * Math.tan((angulationDeg * Math.PI) / 180)) * mmPerPixel;
}

function alongAxis(from: Pixel, to: Pixel, mmPerPixel: number): (p: Pixel) => number {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const d = [(to[0] - from[0]) / length, (to[1] - from[1]) / length] as const;
  return (p) => ((p[0] - from[0]) * d[0] + (p[1] - from[1]) * d[1]) * mmPerPixel;
}

const rms = (v: readonly number[]): number => Math.sqrt(v.reduce((s, x) => s + x * x, 0) / Math.max(1, v.length));
const covered = (v: readonly { z: number }[]): number =>
  v.filter(({ z }) => Math.abs(z) <= NINETY).length / Math.max(1, v.length);

function quantile(v: readonly number[], share: number): number {
  const sorted = [...v].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}

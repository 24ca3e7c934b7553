/**
 * Damaged films by the thousand: what becomes of them, seed by seed. Decoding runs in a process of its own, so that
 * a hang or a crash ends that process, is counted, and the run goes on with the next seed.
 */
import { fork } from 'node:child_process';
import type { Outcome, Report } from './film-mutations-child.ts';
import type { Row } from './row.ts';

const COPIES = 20_000;
const LIMIT_MS = 30_000;
/** A word of a header that still makes sense, a pixel of a format without checksum: nothing tells them from the true ones. */
const NO_CHECKSUM = 'damage that no checksum covers cannot be seen';

/** Decodes `count` damaged copies of the reference films, seeds 1 to `count`. */
export async function benchFilmMutations(count = COPIES): Promise<Row[]> {
  const reports: Report[] = [];
  let hangs = 0;
  let deaths = 0;
  for (let next = 1; next <= count; ) {
    const ended = await run(next, count + 1, (report) => {
      reports.push(report);
      next = report.seed + 1;
    });
    if (ended === 'done') break;
    if (ended === 'hang') hangs += 1;
    else deaths += 1;
    process.stderr.write(`seed ${next}: ${ended}\n`);
    next += 1;
  }
  for (const report of reports)
    if (report.words) process.stderr.write(`seed ${report.seed}, ${report.file}: ${report.words}\n`);
  const slowest = reports.reduce((a, b) => (b.ms > a.ms ? b : a));
  const of = (outcome: Outcome): number => reports.filter((r) => r.outcome === outcome).length;
  return [
    { what: 'damaged films', figure: reports.length + hangs + deaths, unit: 'films' },
    { what: 'crashes', figure: of('crash') + deaths, unit: 'films', goal: '0' },
    { what: `hangs past ${LIMIT_MS / 1000} s`, figure: hangs, unit: 'films', goal: '0' },
    { what: 'refused in words', figure: of('refused'), unit: 'films' },
    { what: 'returned, not a pixel changed', figure: of('unchanged'), unit: 'films' },
    { what: 'returned with another size, depth or kind', figure: of('other shape'), unit: 'films', goal: NO_CHECKSUM },
    { what: 'returned with other pixels', figure: of('other pixels'), unit: 'films', goal: NO_CHECKSUM },
    ...byCoding(reports),
    { what: `slowest (seed ${slowest.seed}, ${slowest.file})`, figure: slowest.ms, unit: 'ms' },
    {
      what: 'most memory of the process',
      figure: Math.max(...reports.map((r) => r.peakBytes)) / 1024 ** 2,
      unit: 'MiB',
    },
  ];
}

type Ended = 'done' | 'hang' | 'death';

function run(from: number, to: number, each: (report: Report) => void): Promise<Ended> {
  return new Promise((resolve) => {
    const child = fork(new URL('./film-mutations-child.ts', import.meta.url), [String(from), String(to)]);
    let hung = false;
    const patience = setTimeout(() => {
      hung = true;
      child.kill('SIGKILL');
    }, LIMIT_MS);
    child.on('message', (report: Report) => {
      patience.refresh();
      each(report);
    });
    child.on('exit', (code) => {
      clearTimeout(patience);
      resolve(hung ? 'hang' : code === 0 ? 'done' : 'death');
    });
  });
}

const CODINGS: readonly [string, RegExp][] = [
  ['plain DICOM', /^\w+(-implicit|-bigendian)?\.dcm$/],
  ['DICOM deflated', /deflated/],
  ['DICOM RLE', /rle\.dcm/],
  ['DICOM JPEG, lossy', /jpeg5[01]\.dcm/],
  ['DICOM JPEG, lossless', /jpeg[57][07]\.dcm$/],
  ['DICOM JPEG-LS', /jpegls/],
  ['DICOM JPEG 2000', /j2k/],
  ['PNG', /\.png$/],
  ['TIFF', /\.tif$/],
  ['JPEG', /\.jpg$/],
];

const byCoding = (reports: readonly Report[]): Row[] =>
  CODINGS.map(([name, pattern]) => {
    const its = reports.filter(({ file }) => CODINGS.find(([, p]) => p.test(file))?.[1] === pattern);
    const changed = its.filter(({ outcome }) => outcome === 'other pixels').length;
    return { what: `  ${name}: other pixels, of ${its.length}`, figure: changed, unit: 'films' };
  });

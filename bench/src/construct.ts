/** Time of samples and of single evaluations, and how often intervals hold the truth. */
import { assessConstruct, type Case, drawnMargins, evaluateNominal, LOADS } from '@bonewright/construct';
import { inventedCase, spreader } from './construct-cases.ts';
import type { Row } from './row.ts';

const SAMPLES = 300;
const CONSTRUCTS = 200;
const BYTES_PER_MIB = 2 ** 20;
const MICROSECONDS_PER_MS = 1000;

export function benchConstruct(): readonly Row[] {
  const frame = inventedCase(spreader(1), false);
  const tied = inventedCase(spreader(1), true);
  return [
    ...timed('six pins, five loads', frame),
    ...timed('six pins and IM pin tied in, five loads', tied),
    honesty(),
    { what: 'memory of the process', figure: process.memoryUsage().rss / BYTES_PER_MIB, unit: 'MiB' },
  ];
}

function timed(name: string, patientCase: Case): Row[] {
  const construct = patientCase.construct!;
  const nominal = () => evaluateNominal(patientCase, construct);
  const few = () => assessConstruct(patientCase, construct, { samples: 10, seed: 1 });
  const many = () => assessConstruct(patientCase, construct, { samples: SAMPLES + 10, seed: 1 });
  const first = millisecondsOf(many);
  const samples = medianMs(many, 15) - medianMs(few, 15);
  return [
    { what: `${SAMPLES} samples, ${name}`, figure: samples, unit: 'ms of one core', goal: 'at most 150' },
    { what: `assessment in a cold process, ${name}`, figure: first, unit: 'ms of one core' },
    { what: `one construct at its middle values, ${name}`, figure: medianMs(nominal, 40), unit: 'ms of one core' },
  ];
}

/** Share of the margins of invented constructs, true inputs drawn, that lie in their 90 % interval. */
function honesty(): Row {
  let held = 0;
  for (let i = 0; i < CONSTRUCTS; i += 1) {
    const patientCase = inventedCase(spreader(1000 + i), i % 4 === 0);
    const construct = patientCase.construct!;
    const { loads } = assessConstruct(patientCase, construct, { samples: SAMPLES, seed: i });
    const [truth] = drawnMargins(patientCase, construct, { count: 1, seed: 10_000 + i });
    held += LOADS.filter((load) => {
      const { p05, p95 } = loads[load].margin;
      return truth![load] >= p05 && truth![load] <= p95;
    }).length;
  }
  const figure = (100 * held) / (CONSTRUCTS * LOADS.length);
  return {
    what: `truth inside the 90 % interval, ${CONSTRUCTS} constructs, five loads`,
    figure,
    unit: '%',
    goal: '86 to 94',
  };
}

/** Processor time, so that others on the machine do not count. */
function millisecondsOf(work: () => unknown): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / MICROSECONDS_PER_MS;
}

function medianMs(work: () => unknown, runs: number): number {
  const times = Array.from({ length: runs }, () => millisecondsOf(work)).toSorted((a, b) => a - b);
  return times[times.length >> 1]!;
}

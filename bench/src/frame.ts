/** Speed of the frame solver on a six-pin frame of about 300 unknowns, and how near it comes to the machine's best. */
import { type CompiledFrame, compileFrame, type FrameModel, solveFrame } from '@bonewright/frame';
import { type CalculixRun, runCalculix } from './calculix.ts';
import { bondedFrame, SIX_PIN_SUPPORTS, sixPinFrame } from './frame-model.ts';
import { measureMultiplyAdds } from './multiply-adds.ts';
import type { Row } from './row.ts';

const RUNS = 500;
const TRIES = 12;
const SAMPLES = 300;
const BYTES_PER_MIB = 2 ** 20;

export function benchFrame(): readonly Row[] {
  return [...constructRows(), ...calculixRows(), ...compileRows(), ...otherRows(), ...memoryRows()];
}

/** The speed, and the multiply-adds in it over those the machine could have done, measured in the same minute. */
function constructRows(): Row[] {
  const frame = sixPins(false, 'wasm');
  const seconds = secondsOf(frame);
  const best = measureMultiplyAdds(1);
  const share = frame.multiplyAdds / seconds / best;
  return [
    { what: 'constructs (294 unknowns, five loads, contacts on)', figure: 1 / seconds, unit: '/s', goal: '5,000' },
    { what: `${SAMPLES} samples of it`, figure: SAMPLES * seconds * 1000, unit: 'ms', goal: 'at most 150' },
    { what: 'multiply-adds of one construct', figure: frame.multiplyAdds, unit: '' },
    { what: 'multiply-adds this machine does, one number at a time', figure: best / 1e9, unit: 'G/s' },
    { what: 'the same, two at a time', figure: measureMultiplyAdds(2) / 1e9, unit: 'G/s' },
    { what: 'share of the first that a construct reaches', figure: 100 * share, unit: '%', goal: '30' },
  ];
}

function otherRows(): Row[] {
  const nail = secondsOf(sixPins(true, 'wasm'));
  const reference = secondsOf(sixPins(false, 'typescript'));
  return [
    { what: 'constructs with a loose IM pin in eight sleeves (342 unknowns)', figure: 1 / nail, unit: '/s' },
    { what: 'constructs by the TypeScript reference', figure: 1 / reference, unit: '/s' },
  ];
}

function compileRows(): Row[] {
  const model = sixPinFrame();
  const seconds = bestOf(() => {
    for (let i = 0; i < 20; i++) compileFrame(model, SIX_PIN_SUPPORTS);
  }, 20);
  return [{ what: 'compiling a frame anew', figure: seconds * 1000, unit: 'ms' }];
}

/** Our solve and one process of theirs, the same frame and load. */
function calculixRows(): Row[] {
  const model = bondedFrame();
  const runs = Array.from({ length: TRIES }, () => runCalculix(model, 'distal'));
  const [theirs] = runs.filter((run) => run !== null).toSorted((a, b) => a.milliseconds - b.milliseconds);
  const ours = secondsOf(compileFrame(model)) * 1000;
  if (!theirs) return [{ what: 'CalculiX is not installed: no ratio', figure: 0, unit: '' }];
  return [
    { what: 'CalculiX, one process, the frame bonded and without contacts', figure: theirs.milliseconds, unit: 'ms' },
    { what: 'ours on the same frame and load', figure: ours, unit: 'ms' },
    { what: 'ratio', figure: theirs.milliseconds / ours, unit: 'times', goal: '500' },
    { what: 'largest difference of the displacements, of the largest', figure: difference(model, theirs), unit: '' },
  ];
}

function difference(model: FrameModel, { displacement }: CalculixRun): number {
  const ours = Object.values(solveFrame(model).loads)[0]?.displacements.distal ?? [];
  return Math.max(
    ...[0, 3].map((kind) => {
      const size = Math.max(...ours.slice(kind, kind + 3).map(Math.abs));
      return Math.max(
        ...ours.slice(kind, kind + 3).map((value, k) => Math.abs(value - displacement[kind + k]!) / size),
      );
    }),
  );
}

function memoryRows(): Row[] {
  return [{ what: 'memory of the process', figure: process.memoryUsage().rss / BYTES_PER_MIB, unit: 'MiB' }];
}

function sixPins(withPin: boolean, kernel: 'wasm' | 'typescript'): CompiledFrame {
  return compileFrame(sixPinFrame(withPin), { ...SIX_PIN_SUPPORTS, kernel });
}

/** Seconds a solve, bone modulus changed before each, the best of some tries. */
function secondsOf(frame: CompiledFrame): number {
  const bone = frame.members.indexOf('shaft-10.5');
  const before = frame.inputs.youngMPa[bone]!;
  return bestOf(() => {
    for (let i = 0; i < RUNS; i++) {
      frame.inputs.youngMPa[bone] = before * (1 + (i % 50) / 500);
      frame.solve();
    }
  }, RUNS);
}

function bestOf(work: () => void, units: number): number {
  work();
  const times = Array.from({ length: TRIES }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return Math.min(...times) / 1000 / units;
}

/** A measured departure against the limits of the evidence, in a sentence. */
import { entry } from '@bonewright/evidence';
import type { Measured } from '../model/trace.ts';

export interface Finding {
  /** `frontal`, `pin-place`, ... */
  readonly id: string;
  /** What it is about: `P2`, `distal fragment`. */
  readonly about: string;
  readonly measured: Measured;
  readonly unit: 'mm' | 'deg' | '%';
  /** From here on looked at again, and not accepted; null where nobody says. */
  readonly watch: number;
  readonly stop: number | null;
  /** `unknown`: not measured. The verdict is of the value; the sentence says where its sd leaves it open. */
  readonly verdict: 'good' | 'watch' | 'stop' | 'unknown';
  readonly because: string;
  readonly evidence: readonly string[];
}

export interface Departure {
  readonly id: string;
  readonly about: string;
  readonly measured: Measured;
  readonly unit: Finding['unit'];
  /** Entry whose low end is where to look again and whose high end is not accepted. */
  readonly limits: string;
  /** What one unit of the entry is here, as a pin's diameter in mm. */
  readonly times?: number;
  /** The departure in words, without its figure: `tip deeper than planned`. */
  readonly words: string;
}

const SURE_SDS = 2;

/** Judges a departure by its size, whichever way it goes. */
export function finding({ id, about, measured, unit, limits, times = 1, words }: Departure): Finding {
  const { low, high } = entry(limits);
  const [watch, stop] = [low * times, high * times];
  const base = { id, about, measured, unit, watch, stop, evidence: [limits] };
  if (measured.value === null) {
    return {
      ...base,
      verdict: 'unknown',
      because: `${about}: not measured: ${measured.why ?? 'the film does not say'}`,
    };
  }
  const size = Math.abs(measured.value);
  const sd = measured.sd ?? 0;
  const verdict = size > stop ? 'stop' : size > watch ? 'watch' : 'good';
  const isOpen = [watch, stop].some((limit) => Math.abs(size - limit) < SURE_SDS * sd);
  const open = isOpen ? '; the measurement is not sure enough to say on which side of a limit it lies' : '';
  const because = `${about}: ${figure(size, unit)} ± ${figure(sd, unit)} ${words}; looked at again above ${figure(watch, unit)}, not accepted above ${figure(stop, unit)}${open}`;
  return { ...base, verdict, because };
}

export const figure = (v: number, unit: Finding['unit']): string =>
  unit === '%' ? `${v.toFixed(0)} %` : `${v.toFixed(1)} ${unit}`;

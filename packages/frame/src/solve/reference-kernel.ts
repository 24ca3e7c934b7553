/**
 * The factorisation in plain TypeScript: the readable reference. The WebAssembly kernel does the same operations on
 * each number in the same order, so that both give the same bits. K = UT D U by rows; row k holds d_k U_k.
 */
import { ELEMENT_ROWS, MODES, ROW } from '../assemble/deformations.ts';
import type { Memory } from './memory.ts';
import { BLOCK_HEAD, ELEMENT_PAIRS, type Program, RUN, STEP_HEAD } from './program.ts';

/** A pivot below this share of its diagonal may be nothing but rounding: it is looked at again, exactly. */
export const SUSPECT = 1e-8;

/** A range of elimination steps, `to` not included. */
export interface Steps {
  readonly from: number;
  readonly to: number;
}

/** Says what pivot to use for a suspect unknown; may throw. */
export type Judge = (unknown: number, pivot: number) => number;

/** Adds every element's stiffness, the sum of k row rowT. */
export function assemble(program: Program, memory: Memory): void {
  const { values, rows, stiffness, elementValues } = memory;
  values.fill(0);
  for (let element = 0; element < program.elements; element++) {
    let pair = element * ELEMENT_PAIRS;
    for (let i = 0; i < ROW; i++) {
      for (let j = i; j < ROW; j++) {
        let sum = 0;
        for (let mode = 0; mode < MODES; mode++) {
          const at = element * ELEMENT_ROWS + mode * ROW;
          sum += stiffness[element * MODES + mode]! * rows[at + i]! * rows[at + j]!;
        }
        values[elementValues[pair]!]! += sum;
        pair++;
      }
    }
  }
}

/** Keeps the diagonal as assembled. */
export function keepDiagonal(program: Program, { values, diagonal, steps, stepAt }: Memory): void {
  for (let step = 0; step < program.interiorSteps; step++) {
    const at = stepAt[step]!;
    const [size, base, width, first] = [steps[at]!, steps[at + 1]!, steps[at + 2]!, steps[at + 3]!];
    for (let k = 0; k < size; k++) diagonal[first + k] = values[base + k * width + k]!;
  }
  const width = program.unknowns - program.interior;
  for (let k = 0; k < width; k++) diagonal[program.interior + k] = values[program.interfaceAt + k * (width + 1)]!;
}

/**
 * Takes elimination steps; what is left holds what they pass on to it.
 * Without a judge it stops at the first suspect pivot and returns its unknown; -1 where all went well.
 */
export function eliminate(memory: Memory, { from, to }: Steps, judge?: Judge): number {
  for (let step = from; step < to; step++) {
    const suspect = eliminatePanel(memory, memory.stepAt[step]!, judge);
    if (suspect >= 0) return suspect;
    passOn(memory, memory.stepAt[step]!);
  }
  return -1;
}

/** Eliminates within the panel's own rows. */
function eliminatePanel({ values, diagonal, inverse, steps }: Memory, at: number, judge?: Judge): number {
  const [size, base, width, first] = [steps[at]!, steps[at + 1]!, steps[at + 2]!, steps[at + 3]!];
  for (let k = 0; k < size; k++) {
    const row = base + k * width;
    let pivot = values[row + k]!;
    if (!(pivot > SUSPECT * diagonal[first + k]!)) {
      if (!judge) return first + k;
      pivot = judge(first + k, pivot);
    }
    inverse[first + k] = 1 / pivot;
    for (let i = k + 1; i < size; i++) {
      const share = values[row + i]! * inverse[first + k]!;
      const target = base + i * width;
      for (let j = i; j < width; j++) values[target + j]! -= share * values[row + j]!;
    }
  }
  return -1;
}

/** Takes the panel's part from the rows of the groups it is tied to. */
function passOn({ values, inverse, steps }: Memory, at: number): void {
  const [size, base, width, first] = [steps[at]!, steps[at + 1]!, steps[at + 2]!, steps[at + 3]!];
  let block = at + STEP_HEAD + steps[at + 4]!;
  for (let left = steps[at + 5]!; left > 0; left--) {
    const [rows, column, stride, runs] = [steps[block]!, steps[block + 1]!, steps[block + 2]!, steps[block + 3]!];
    block += BLOCK_HEAD;
    for (let i = 0; i < rows; i++) {
      for (let run = 0; run < runs; run++) {
        const [source, length, target] = [
          steps[block + run * RUN]!,
          steps[block + run * RUN + 1]!,
          steps[block + run * RUN + 2]!,
        ];
        for (let j = run === 0 ? i : 0; j < length; j++) {
          let value = values[target + i * stride + j]!;
          for (let k = 0; k < size; k++) {
            const share = values[base + k * width + column + i]! * inverse[first + k]!;
            value -= share * values[base + k * width + source + j]!;
          }
          values[target + i * stride + j] = value;
        }
      }
    }
    block += runs * RUN;
  }
}

/** Takes the loads on what the steps eliminate through to the rest, every column at once. */
export function forward({ values, inverse, x, steps, stepAt }: Memory, range: Steps, columns: number): void {
  for (let step = range.from; step < range.to; step++) {
    const at = stepAt[step]!;
    const [size, base, width, first] = [steps[at]!, steps[at + 1]!, steps[at + 2]!, steps[at + 3]!];
    for (let k = 0; k < size; k++) {
      const row = base + k * width;
      const from = (first + k) * columns;
      for (let j = k + 1; j < width; j++) {
        const share = values[row + j]! * inverse[first + k]!;
        const to = columns * (j < size ? first + j : steps[at + STEP_HEAD + j - size]!);
        for (let c = 0; c < columns; c++) x[to + c]! -= share * x[from + c]!;
      }
    }
  }
}

/** From the motions of the rest to those of what the steps eliminated, every column at once. */
export function back({ values, inverse, x, steps, stepAt }: Memory, range: Steps, columns: number): void {
  for (let step = range.to - 1; step >= range.from; step--) {
    const at = stepAt[step]!;
    const [size, base, width, first] = [steps[at]!, steps[at + 1]!, steps[at + 2]!, steps[at + 3]!];
    for (let k = size - 1; k >= 0; k--) {
      const row = base + k * width;
      const to = (first + k) * columns;
      for (let c = 0; c < columns; c++) {
        let sum = x[to + c]!;
        for (let j = k + 1; j < width; j++) {
          const from = columns * (j < size ? first + j : steps[at + STEP_HEAD + j - size]!);
          sum -= values[row + j]! * x[from + c]!;
        }
        x[to + c] = sum * inverse[first + k]!;
      }
    }
  }
}

/** Deformations of every element from the motions. */
export function deform(program: Program, { rows, x, amounts, elementUnknowns }: Memory, columns: number): void {
  for (let element = 0; element < program.elements; element++) {
    for (let mode = 0; mode < MODES; mode++) {
      const row = element * ELEMENT_ROWS + mode * ROW;
      for (let c = 0; c < columns; c++) {
        let sum = 0;
        for (let k = 0; k < ROW; k++) sum += rows[row + k]! * x[elementUnknowns[element * ROW + k]! * columns + c]!;
        amounts[(element * MODES + mode) * columns + c] = sum;
      }
    }
  }
}

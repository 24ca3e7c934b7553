/** The numbers that a factorisation works on, as views of one buffer, so that either kernel can reach them. */
import type { Program } from './program.ts';

export interface Memory {
  /** The stiffness, then its factor, where `Program` says; the last number catches what has no place. */
  readonly values: Float64Array;
  /** Diagonal of the stiffness as assembled, one an unknown: what pivots are judged by. */
  readonly diagonal: Float64Array;
  /** 1 / pivot, one an interior unknown. */
  readonly inverse: Float64Array;
  /** `columns` numbers an unknown: loads going in, motions coming out; the last row stays 0. */
  readonly x: Float64Array;
  /** 6 an element: stiffness of its deformations. */
  readonly stiffness: Float64Array;
  /** 72 an element: its deformations as rows over its motions. */
  readonly rows: Float64Array;
  /** 6 an element for each column: deformations. */
  readonly amounts: Float64Array;
  /** Room for what one step takes from one block: its unknowns times the block's rows. */
  readonly shares: Float64Array;
  readonly steps: Int32Array;
  readonly stepAt: Int32Array;
  readonly elementUnknowns: Int32Array;
  readonly elementValues: Int32Array;
}

/** Bytes that `placeMemory` needs. */
export function memoryBytes(program: Program, columns: number): number {
  const { floats, integers } = sizes(program, columns);
  return 8 * sum(floats) + 4 * sum(integers);
}

/** Lays the views out in a buffer from a byte offset (a multiple of 16) on; the program is copied in. */
export function placeMemory(program: Program, columns: number, buffer: ArrayBuffer, offset: number): Memory {
  const { floats, integers } = sizes(program, columns);
  let at = offset;
  const numbers = floats.map((length) => {
    const view = new Float64Array(buffer, at, length);
    at += 8 * length;
    return view;
  });
  const whole = integers.map((length) => {
    const view = new Int32Array(buffer, at, length);
    at += 4 * length;
    return view;
  });
  const [values, diagonal, inverse, x, stiffness, rows, amounts, shares] = numbers;
  const [steps, stepAt, elementUnknowns, elementValues] = whole;
  if (!values || !diagonal || !inverse || !x || !stiffness || !rows || !amounts || !shares) throw new Error('too few');
  if (!steps || !stepAt || !elementUnknowns || !elementValues) throw new Error('too few');
  steps.set(program.steps);
  stepAt.set(program.stepAt);
  elementUnknowns.set(program.elementUnknowns);
  elementValues.set(program.elementValues);
  return {
    values,
    diagonal,
    inverse,
    x,
    stiffness,
    rows,
    amounts,
    shares,
    steps,
    stepAt,
    elementUnknowns,
    elementValues,
  };
}

/** Lengths in the order of the views, each a multiple that keeps the next one on 16 bytes. */
function sizes({ values, unknowns, elements, ...program }: Program, columns: number) {
  const even = (length: number) => length + (length % 2);
  const four = (length: number) => Math.ceil(length / 4) * 4;
  return {
    floats: [
      even(values + 1),
      even(unknowns + 1),
      even(unknowns + 1),
      even((unknowns + 1) * columns),
      6 * elements,
      72 * elements,
      6 * elements * columns,
      Math.max(36, program.hidden * even(unknowns - program.interior - program.hidden)),
    ],
    integers: [
      four(program.steps.length),
      four(program.stepAt.length),
      four(program.elementUnknowns.length),
      four(program.elementValues.length),
    ],
  };
}

const sum = (list: readonly number[]): number => list.reduce((total, value) => total + value, 0);

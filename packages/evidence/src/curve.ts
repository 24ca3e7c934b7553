/** A published curve as a sum of terms coefficient * bore^b * ratio^r, with its source. */
import type { Source, Status } from './entry.ts';

export interface Curve {
  readonly id: string;
  readonly name: string;
  readonly appliesTo: string;
  readonly source: Source;
  readonly status: Status;
  readonly terms: readonly { readonly coefficient: number; readonly bore: number; readonly ratio: number }[];
}

/** Rows of a curve: for each power of the ratio its coefficients, by the power of the bore. */
export const termsOf = (rows: readonly (readonly (readonly [bore: number, coefficient: number])[])[]): Curve['terms'] =>
  rows.flatMap((row, ratio) => row.map(([bore, coefficient]) => ({ coefficient, bore, ratio })));

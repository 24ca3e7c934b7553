/** One measured figure. */
export interface Row {
  readonly what: string;
  readonly figure: number;
  readonly unit: string;
  /** What it ought to be, in words. */
  readonly goal?: string;
}

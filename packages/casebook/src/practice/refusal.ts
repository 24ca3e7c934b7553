/** Why an event says nothing where it stands. */
export interface Refusal {
  readonly because: string;
}

/** Every weight of a case in the order of time, with its change against the first one without a frame. */
import type { RecordedEvent } from './events.ts';
import { isKnown } from './events.ts';

export interface WeightPoint {
  readonly at: string;
  readonly massG: number;
  readonly withFrame: boolean;
  /** Per cent against the first weight without a frame; null with a frame on, which weighs too. */
  readonly changePercent: number | null;
}

export function weightSeries(recorded: readonly RecordedEvent[]): WeightPoint[] {
  const weights = recorded.flatMap(weightsIn).toSorted((a, b) => a.at.localeCompare(b.at));
  const first = weights.find(({ withFrame }) => !withFrame)?.massG ?? null;
  return weights.map((weight) => ({
    ...weight,
    changePercent: weight.withFrame || first === null ? null : (100 * (weight.massG - first)) / first,
  }));
}

function weightsIn(event: RecordedEvent): Omit<WeightPoint, 'changePercent'>[] {
  if (!isKnown(event)) return [];
  const { kind, payload, at } = event;
  if (kind === 'weighed') return [{ at: payload.at, massG: payload.massG, withFrame: payload.withFrame }];
  if (kind !== 'case-opened' && kind !== 'patient-amended') return [];
  const { massG, weighedAt } = payload;
  return massG == null ? [] : [{ at: weighedAt ?? at, massG, withFrame: false }];
}

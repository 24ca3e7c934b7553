/** Trials counted along the axis of the margin bars, in steps of one width on that axis. */
import { onAxis } from './axis.ts';
import { FAILS, WATCH } from './verdict.ts';

export interface Bin {
  /** Places on the axis in per cent of its width. */
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

const WHOLE = 100;
const STEPS_LEFT_OF = { fails: 14, watch: 8 };

/** Edges fall on the limits, so that no bar stands on both sides of one. */
function edges(): number[] {
  const [fails, watch] = [onAxis(FAILS), onAxis(WATCH)];
  const between = (from: number, to: number, steps: number) =>
    Array.from({ length: steps }, (_, i) => from + ((to - from) * i) / steps);
  const last = Math.round((WHOLE - watch) / ((watch - fails) / STEPS_LEFT_OF.watch));
  return [
    ...between(0, fails, STEPS_LEFT_OF.fails),
    ...between(fails, watch, STEPS_LEFT_OF.watch),
    ...between(watch, WHOLE, last),
    WHOLE,
  ];
}

/** Every trial is in one bin; those off the axis in the first or the last. */
export function binsOf(trials: readonly number[]): Bin[] {
  const at = edges();
  const counts = at.slice(1).map(() => 0);
  for (const trial of trials) {
    const place = onAxis(trial);
    // A trial on an edge belongs to the bin that begins there.
    const bin = Math.max(
      0,
      Math.min(
        counts.length - 1,
        at.findLastIndex((edge) => edge <= place),
      ),
    );
    counts[bin]! += 1;
  }
  return counts.map((count, i) => ({ from: at[i]!, to: at[i + 1]!, count }));
}

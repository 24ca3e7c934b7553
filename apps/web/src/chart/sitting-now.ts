/** The anaesthetic that is running now. */
import type { ChartSitting } from '@bonewright/casebook';

/** As long as a pause may be inside one chart. */
const RUNNING_MS = 90 * 60_000;

/** The last one, if something was written in it within the last hour and a half; null otherwise. */
export function sittingNow(sittings: readonly ChartSitting[], now: number): ChartSitting | null {
  const last = sittings.at(-1);
  return last && now - Date.parse(last.to) <= RUNNING_MS ? last : null;
}

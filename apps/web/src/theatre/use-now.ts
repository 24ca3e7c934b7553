/** The time, told again so often; minutes are counted from what the record says, so that a reload changes nothing. */
import { useEffect, useState } from 'react';

const TELL_MS = 5000;

export function useNow(): number {
  const [now, tell] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => tell(Date.now()), TELL_MS);
    return () => clearInterval(timer);
  }, []);
  return now;
}

const MINUTE_MS = 60_000;

/** Whole minutes since then; never below 0, whatever the clocks say. */
export const minutesSince = (iso: string, now: number): number =>
  Math.max(0, Math.floor((now - Date.parse(iso)) / MINUTE_MS));

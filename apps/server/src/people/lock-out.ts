/** How long a name or an address waits after tries that failed: five are free, then the wait doubles. */
interface Patience {
  readonly free: number;
  readonly firstWaitS: number;
  readonly longestWaitS: number;
}

/** At most 13 tries in the first hour, 4 in each after: OWASP ASVS 4.0.3, 2.2.1 allows a hundred on one account. */
export const WITH_NAME: Patience = { free: 5, firstWaitS: 15, longestWaitS: 15 * 60 };
/** A practice's tablets may share one address. */
export const WITH_ADDRESS: Patience = { free: 20, firstWaitS: 15, longestWaitS: 15 * 60 };

/** The moment from which on the next try is taken. */
export function waitUntil({ free, firstWaitS, longestWaitS }: Patience): (failures: number, lastAt: string) => string {
  return (failures, lastAt) => {
    const waitS = failures < free ? 0 : Math.min(firstWaitS * 2 ** (failures - free), longestWaitS);
    return new Date(Date.parse(lastAt) + waitS * 1000).toISOString();
  };
}

export function waitWords(untilIso: string, now: Date): string {
  const seconds = Math.max(1, Math.ceil((Date.parse(untilIso) - now.getTime()) / 1000));
  if (seconds < 60) return `${seconds} seconds`;
  const minutes = Math.ceil(seconds / 60);
  return minutes === 1 ? '1 minute' : `${minutes} minutes`;
}

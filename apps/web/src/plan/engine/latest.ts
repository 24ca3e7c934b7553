/** Runs one job at a time and, of those that came in meanwhile, only the last. */
export function latestOnly<A extends unknown[]>(job: (...args: A) => Promise<void>): (...args: A) => void {
  let isRunning = false;
  let waiting: A | null = null;
  const run = async (...args: A): Promise<void> => {
    isRunning = true;
    try {
      await job(...args);
    } finally {
      isRunning = false;
      const next = waiting;
      waiting = null;
      if (next) void run(...next);
    }
  };
  return (...args) => {
    if (isRunning) waiting = args;
    else void run(...args);
  };
}

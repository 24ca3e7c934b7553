import { useCallback, useState } from 'react';

/** Something the server is asked to do: why it would not, in words, and whether it is being done. */
export function useDoing() {
  const [why, setWhy] = useState<string | null>(null);
  const [isDoing, setDoing] = useState(false);
  const run = useCallback(async (work: () => Promise<unknown>): Promise<boolean> => {
    setDoing(true);
    setWhy(null);
    try {
      await work();
      return true;
    } catch (error) {
      setWhy(error instanceof Error ? error.message : String(error));
      return false;
    } finally {
      setDoing(false);
    }
  }, []);
  return { why, isDoing, run };
}

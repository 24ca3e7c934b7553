/** The margin of every trial behind one load's full figures; null until they are in. */
import type { CaseFile, Construct, LoadName } from '@bonewright/construct';
import { useEffect, useState } from 'react';
import type { Engine } from './engine.ts';

/** `settled` is the construct whose full figures are in; null while there are none. */
export function useTrials(
  engine: Engine,
  file: CaseFile,
  settled: Construct | null,
  load: LoadName | null,
): readonly number[] | null {
  const [trials, setTrials] = useState<readonly number[] | null>(null);
  useEffect(() => {
    if (!settled || !load) return;
    let isWanted = true;
    const work = async () => {
      const answer = await engine.ask('full', file, (jobs, sent) => jobs.trials(sent, settled, load));
      if (isWanted) setTrials(answer?.value ?? null);
    };
    void work();
    return () => {
      isWanted = false;
      setTrials(null);
    };
  }, [engine, file, settled, load]);
  return trials;
}

/** What-ifs and improvements, worked out after the full figures are in and thrown away when the plan changes. */
import type { CaseFile, Construct } from '@bonewright/construct';
import { useEffect, useState } from 'react';
import type { Improvement, WhatIf } from './answers.ts';
import type { Engine } from './engine.ts';

export interface LongAnswers {
  readonly whatIfs: readonly WhatIf[] | null;
  readonly improvements: readonly Improvement[] | null;
}

const NONE: LongAnswers = { whatIfs: null, improvements: null };

/** `settled` is the construct whose full figures are in; null while the hand moves.  */
export function useLongJobs(engine: Engine, file: CaseFile, settled: Construct | null): LongAnswers {
  const [answers, setAnswers] = useState(NONE);
  useEffect(() => {
    if (!settled) return;
    let isWanted = true;
    const keep = (some: Partial<LongAnswers>) => isWanted && setAnswers((now) => ({ ...now, ...some }));
    const work = async () => {
      const improved = await engine.ask('what-if', file, (jobs, sent) => jobs.improvements(sent, settled));
      if (improved?.value) keep({ improvements: improved.value });
      if (!isWanted) return;
      const asked = await engine.ask('what-if', file, (jobs, sent) => jobs.whatIfs(sent, settled));
      if (asked?.value) keep({ whatIfs: asked.value });
    };
    void work();
    return () => {
      isWanted = false;
      engine.stop('what-if');
      setAnswers(NONE);
    };
  }, [engine, file, settled]);
  return answers;
}

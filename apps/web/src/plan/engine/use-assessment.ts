/** Figures for the construct under the hand: quick ones at once, full ones with spread when it rests. */
import type { CaseFile, Construct, Plan } from '@bonewright/construct';
import { useEffect, useMemo, useRef, useState } from 'react';
import { carrySpread } from './carry-spread.ts';
import type { Engine } from './engine.ts';
import type { Answer } from './engine.worker.ts';
import { latestOnly } from './latest.ts';

export interface Assessment {
  readonly plan: Plan | null;
  /** `quick`: middle values just solved, spread carried over from the last full run. */
  readonly exactness: 'quick' | 'full' | 'none';
  /** The construct that the figures belong to. */
  readonly construct: Construct | null;
  /** What was wrong with the case or construct, in one line. */
  readonly why: string | null;
}

const NOTHING: Assessment = { plan: null, exactness: 'none', construct: null, why: null };

/** A hand that paused this long is at rest. */
const REST_MS = 60;

export function useAssessment(engine: Engine, file: CaseFile | null, construct: Construct | null): Assessment {
  const [assessment, setAssessment] = useState<Assessment>(NOTHING);
  const wanted = useRef(construct);
  wanted.current = construct;
  const lastFull = useRef<Plan | null>(null);

  const askQuick = useMemo(
    () =>
      latestOnly(async (asked: CaseFile, about: Construct) => {
        const answer = await engine.ask('quick', asked, (jobs, sent) => jobs.quick(sent, about));
        if (!answer || wanted.current !== about) return;
        const full = lastFull.current;
        setAssessment((now) => {
          if (now.construct === about && now.exactness === 'full') return now;
          return said(answer, about, 'quick', (plan) => (full ? carrySpread(plan, full) : plan));
        });
      }),
    [engine],
  );
  const askFull = useMemo(
    () =>
      latestOnly(async (asked: CaseFile, about: Construct) => {
        const answer = await engine.ask('full', asked, (jobs, sent) => jobs.full(sent, about));
        if (!answer || wanted.current !== about) return;
        if (answer.value) lastFull.current = answer.value;
        setAssessment(said(answer, about, 'full', (plan) => plan));
      }),
    [engine],
  );

  useEffect(() => {
    if (!file || !construct) {
      setAssessment(NOTHING);
      return;
    }
    askQuick(file, construct);
    const rest = setTimeout(() => askFull(file, construct), REST_MS);
    return () => clearTimeout(rest);
  }, [file, construct, askQuick, askFull]);
  return assessment;
}

function said(
  answer: Answer<Plan>,
  construct: Construct,
  exactness: 'quick' | 'full',
  finish: (plan: Plan) => Plan,
): Assessment {
  const { value, why } = answer;
  return { plan: value && finish(value), exactness, construct, why };
}

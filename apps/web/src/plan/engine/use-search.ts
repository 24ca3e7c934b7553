/** One search over the drawer at a time; what it has found so far, and its progress in words. */
import type { CaseFile, Ranking } from '@bonewright/construct';
import { proxy } from 'comlink';
import { useCallback, useMemo, useState } from 'react';
import { figure } from '../words.ts';
import type { Engine } from './engine.ts';

export interface SearchState {
  readonly isRunning: boolean;
  readonly words: string;
  /** Plans whose figures still move; null when no search runs. */
  readonly soFar: Ranking | null;
  readonly run: (file: CaseFile) => Promise<Ranking | null>;
  readonly stop: () => void;
}

export function useSearch(engine: Engine): SearchState {
  const [words, setWords] = useState('');
  const [isRunning, setRunning] = useState(false);
  const [soFar, setSoFar] = useState<Ranking | null>(null);
  const run = useCallback(
    async (file: CaseFile) => {
      setRunning(true);
      setWords('looking through the drawer');
      const tell = proxy((progress: Ranking) => {
        setSoFar(progress);
        setWords(progressWords(progress));
      });
      try {
        const answer = await engine.ask('search', file, (jobs, sent) => jobs.rank(sent, tell));
        setWords(answer ? (answer.why ?? '') : 'stopped; nothing was changed');
        return answer?.value ?? null;
      } finally {
        setRunning(false);
        setSoFar(null);
      }
    },
    [engine],
  );
  const stop = useCallback(() => engine.stop('search'), [engine]);
  return useMemo(() => ({ isRunning, words, soFar, run, stop }), [isRunning, words, soFar, run, stop]);
}

/** `solved 310 of 1 848, figures still moving`. */
const progressWords = ({ solved, candidates }: Ranking): string =>
  `solved ${figure(solved, 0)} of ${figure(candidates, 0)}, figures still moving`;

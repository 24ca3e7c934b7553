import { BenchTest } from '../bench-test/bench-test.tsx';
import { practiceRecord } from '../sync/records.ts';

interface LotBenchTestProps {
  readonly itemId: string;
  readonly batch: string;
  /** The batch in words. */
  readonly named: string;
  readonly onClose: () => void;
}

/** The bench test of one batch of putty; plans made from it later take its figures. */
export function LotBenchTest({ itemId, batch, named, onClose }: LotBenchTestProps) {
  return (
    <BenchTest
      draftKey={`bench-test ${itemId} ${batch}`}
      onFound={(figures) => practiceRecord().append([{ kind: 'putty-tested', payload: { itemId, batch, ...figures } }])}
      onClose={onClose}
    >
      <p>
        <b>{named}</b>
      </p>
    </BenchTest>
  );
}

/** One reading, one press: every figure stands where it was last time until somebody moves it. */
import type { Reading } from '@bonewright/casebook';
import { LANES, type LaneKey, readValues } from '@bonewright/ward';
import type { Append } from '../sync/new-event.ts';
import { randomId } from '../sync/random-id.ts';
import { useDraft } from '../sync/use-draft.ts';
import { ValueRow } from './value-row.tsx';

interface ReadingFormProps {
  readonly caseId: string;
  readonly last: Reading | null;
  readonly append: Append;
}

type Touched = Readonly<Partial<Record<LaneKey, number | null>>>;

export function ReadingForm({ caseId, last, append }: ReadingFormProps) {
  const draft = useDraft(`reading.${caseId}`, readTouched);
  const touched = draft.value;
  const held = (key: LaneKey): number | null => {
    const mine = touched[key];
    return mine === undefined ? (last?.[key] ?? null) : mine;
  };
  const read = LANES.filter(({ key }) => held(key) !== null);
  const asLast = read.filter(({ key }) => touched[key] === undefined);
  const record = () => {
    const at = new Date().toISOString();
    append([{ kind: 'reading-taken', payload: { readingId: randomId(), at, ...readValues(held), note: '' } }]);
    draft.clear();
  };
  return (
    <section aria-labelledby="reading-title" className="chart-reading">
      <h3 id="reading-title" className="sr-only">
        Reading
      </h3>
      {LANES.map((lane) => (
        <ValueRow
          key={lane.key}
          lane={lane}
          value={held(lane.key)}
          isAsLast={touched[lane.key] === undefined && held(lane.key) !== null}
          onChange={(value) => draft.set({ ...touched, [lane.key]: value })}
        />
      ))}
      <button type="button" className="button button-main" disabled={read.length === 0} onClick={record}>
        Record the reading
      </button>
      <p className="chart-asks">
        {`${read.length} of ${LANES.length} read`}
        {asLast.length > 0 && `, ${asLast.length} as last time: look before you press`}
      </p>
    </section>
  );
}

function readTouched(kept: unknown): Touched {
  if (typeof kept !== 'object' || kept === null) return {};
  const known = Object.entries(kept).filter(
    ([key, value]) => LANES.some((lane) => lane.key === key) && (value === null || typeof value === 'number'),
  );
  return Object.fromEntries(known);
}

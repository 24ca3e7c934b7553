/** How far apart the two views were taken; 90 degrees unless somebody says otherwise. */
import { Field } from '../../form/field.tsx';
import { readNumber } from '../../form/read-number.ts';
import { type Draft, useDraft } from '../../sync/use-draft.ts';

const SQUARE_DEG = 90;

interface Apart {
  readonly draft: Draft<string>;
  readonly betweenViewsDeg: number;
  readonly why: string | null;
}

const LEAST_DEG = 20;
const MOST_DEG = 160;

export function useViewsApart(caseId: string, recordedDeg = SQUARE_DEG): Apart {
  const draft = useDraft(`views-apart.${caseId}`, (kept) => (typeof kept === 'string' ? kept : String(recordedDeg)));
  const degrees = readNumber(draft.value);
  const isUsable = degrees !== null && degrees >= LEAST_DEG && degrees <= MOST_DEG;
  return {
    draft,
    betweenViewsDeg: isUsable ? degrees : SQUARE_DEG,
    why: isUsable ? null : `Write degrees from ${LEAST_DEG} to ${MOST_DEG}; 90 stands in meanwhile.`,
  };
}

export function ViewsApart({ apart }: { readonly apart: Apart }) {
  return (
    <div className="views-apart">
      <Field
        label="The two views are apart"
        unit="deg"
        inputMode="decimal"
        value={apart.draft.value}
        onChange={apart.draft.set}
        why={apart.why}
      />
    </div>
  );
}

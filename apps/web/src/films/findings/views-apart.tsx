/** How far apart the two views were taken; 90 degrees unless somebody says otherwise. */
import { Field } from '../../form/field.tsx';
import { readNumber } from '../../form/read-number.ts';
import { type Draft, useDraft } from '../../sync/use-draft.ts';

const SQUARE = '90';
const readText = (kept: unknown): string => (typeof kept === 'string' ? kept : SQUARE);

interface Apart {
  readonly draft: Draft<string>;
  readonly betweenViewsDeg: number;
  readonly why: string | null;
}

const LEAST_DEG = 20;
const MOST_DEG = 160;

export function useViewsApart(caseId: string): Apart {
  const draft = useDraft(`views-apart.${caseId}`, readText);
  const degrees = readNumber(draft.value);
  const isUsable = degrees !== null && degrees >= LEAST_DEG && degrees <= MOST_DEG;
  return {
    draft,
    betweenViewsDeg: isUsable ? degrees : Number(SQUARE),
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

/** What films alone do not say: the gap that will be left, pieces, lengths to keep out of, depth of skin. Guesses are named as such. */
import { type CaseState, outOfDate } from '@bonewright/casebook';
import type { JoinedBone } from '@bonewright/film';
import { useMemo, useState } from 'react';
import { useLocation } from 'wouter';
import { Choice } from '../../form/choice.tsx';
import { Field } from '../../form/field.tsx';
import type { Append } from '../../sync/new-event.ts';
import { useDraft } from '../../sync/use-draft.ts';
import { type DescriptionDraft, described, faultsIn } from './description-draft.ts';
import { firstGuess } from './first-guess.ts';
import { readDescription } from './read-description.ts';

interface DescriptionProps {
  readonly state: CaseState;
  readonly bone: JoinedBone;
  readonly append: Append;
}

const PIECES = [
  ['no', 'two pieces'],
  ['yes', 'comminuted'],
] as const;

export function Description({ state, bone, append }: DescriptionProps) {
  const [, go] = useLocation();
  const typed = useDraft(`description.${state.caseId}`, readDescription);
  const [isAsked, setAsked] = useState(false);
  const guess = useMemo(() => firstGuess(state, bone), [state, bone]);
  const draft = { ...guess, ...typed.value };
  const faults = faultsIn(draft, bone);
  const isRecorded = state.fracture !== null && Object.keys(typed.value).length === 0 && !isOld(state);
  const change = (part: Partial<DescriptionDraft>) => typed.set({ ...typed.value, ...part });
  const record = (): boolean => {
    setAsked(true);
    if (Object.keys(faults).length > 0) return false;
    append(described(draft, bone));
    typed.clear();
    setAsked(false);
    return true;
  };
  const field = (key: Exclude<keyof DescriptionDraft, 'comminuted'>, label: string, unit?: string) => (
    <Field
      label={label}
      {...(unit ? { unit } : {})}
      inputMode={unit ? 'decimal' : 'text'}
      value={draft[key]}
      onChange={(text) => change({ [key]: text })}
      why={isAsked || key in typed.value ? (faults[key] ?? null) : null}
    />
  );
  return (
    <section className="side-part description" aria-labelledby="description-title">
      <header className="side-head">
        <h3 id="description-title">Fracture and safe lengths</h3>
        <span className="quiet">{isRecorded ? 'recorded' : 'not recorded yet'}</span>
      </header>
      {state.fracture === null && (
        <p className="caption">
          From the films: where it is broken and how oblique. The rest is a guess of one bone's width to begin with:
          correct it.
        </p>
      )}
      {isOld(state) && (
        <p className="caption">The bone was measured again since this was recorded. Look at it, and record it again.</p>
      )}
      <div className="description-fields">
        {field('from', 'Broken from', 'mm')}
        {field('to', 'to', 'mm')}
        {field('gap', 'Gap when set', 'mm')}
        {field('obliquity', 'Oblique', 'deg')}
      </div>
      <Choice
        label="Pieces"
        isLabelHidden
        options={PIECES}
        value={draft.comminuted ? 'yes' : 'no'}
        onChange={(answer) => change({ comminuted: answer === 'yes' })}
      />
      {field('fissures', 'Fissures, in mm down the bone, like 21 to 24')}
      <div className="description-pair">
        {field('keepOutProximal', 'Keep out, proximal', 'mm')}
        {field('keepOutDistal', 'Keep out, distal', 'mm')}
        {field('softProximal', 'Bone to skin, proximal', 'mm')}
        {field('softDistal', 'Bone to skin, distal', 'mm')}
      </div>
      <p className="description-foot">
        <button
          type="button"
          className="button button-main"
          onClick={() => {
            if (isRecorded || record()) go(`/case/${state.caseId}/plan`);
          }}
        >
          Make a plan
        </button>
        <button type="button" className="button" disabled={isRecorded} onClick={record}>
          Record this
        </button>
      </p>
    </section>
  );
}

const isOld = (state: CaseState): boolean => outOfDate(state).some(({ part }) => part === 'fracture');

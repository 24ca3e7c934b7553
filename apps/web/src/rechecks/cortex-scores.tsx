/** Union scored cortex by cortex at every visit, by mouse or by the figures 1 to 4; a sum only where all four are seen. */
import type { CaseState, FilmSet } from '@bonewright/casebook';
import { CORTEX_GRADES, CORTICES, type Cortex, type UnionScale } from '@bonewright/film';
import { type KeyboardEvent, useId } from 'react';
import { setName } from '../films/later/occasion-words.ts';
import type { Append } from '../sync/new-event.ts';
import { useDraft } from '../sync/use-draft.ts';
import { capital } from '../words/patient.ts';
import { readScoreDraft, type ScoreDraft, scoreOfKey, wholeScores } from './score-draft.ts';

interface CortexScoresProps {
  readonly state: CaseState;
  readonly sets: readonly FilmSet[];
  readonly scale: UnionScale;
  readonly append: Append;
}

export function CortexScores({ state, sets, scale, append }: CortexScoresProps) {
  const visits = sets.filter(({ day }) => day !== null);
  return (
    <div className="scores-visits">
      {visits.map((set) => (
        <VisitScores key={setName(set)} {...{ state, set, scale, append }} day={set.day ?? 0} />
      ))}
    </div>
  );
}

interface VisitScoresProps extends Omit<CortexScoresProps, 'sets'> {
  readonly set: FilmSet;
  readonly day: number;
}

function VisitScores({ state, set, day, scale, append }: VisitScoresProps) {
  const draft = useDraft<ScoreDraft>(`scores.${state.caseId}.${scale}.${day}`, readScoreDraft);
  const recorded = state.scores.find(({ value }) => value.scale === scale && value.day === day)?.value.scores;
  const shown: ScoreDraft = { ...recorded, ...draft.value };
  const give = (cortex: Cortex, score: number | null) => {
    const next = { ...shown, [cortex]: score };
    const scores = wholeScores(next);
    if (!scores) return draft.set({ ...draft.value, [cortex]: score });
    const filmIds = [set.craniocaudal, set.mediolateral].flatMap((film) => film?.filmId ?? []);
    append([{ kind: 'cortices-scored', payload: { scale, day, filmIds, scores } }]);
    draft.clear();
  };
  const given = Object.values(shown).filter((score) => score !== undefined);
  const seen = given.filter((score) => score !== null);
  const sum = seen.reduce((total, score) => total + score, 0);
  return (
    <section className="scores-visit" aria-label={`${scale}, ${setName(set)}`}>
      <h3>{setName(set)}</h3>
      {CORTICES.map((cortex) => (
        <CortexField
          key={cortex}
          cortex={cortex}
          scale={scale}
          score={shown[cortex]}
          onScore={(score) => give(cortex, score)}
        />
      ))}
      <p className="scores-sum" role="status">
        {sumWords(scale, sum, seen.length, given.length)}
      </p>
    </section>
  );
}

function sumWords(scale: UnionScale, sum: number, seen: number, given: number): string {
  if (given === 0) return 'not scored';
  if (given < CORTICES.length) return `${given} of ${CORTICES.length} scored, recorded when all are`;
  return seen === CORTICES.length ? `${scale} ${sum}` : `no sum: ${seen} of ${CORTICES.length} seen`;
}

interface CortexFieldProps {
  readonly cortex: Cortex;
  readonly scale: UnionScale;
  readonly score: number | null | undefined;
  readonly onScore: (score: number | null) => void;
}

function CortexField({ cortex, scale, score, onScore }: CortexFieldProps) {
  const name = useId();
  const grades = CORTEX_GRADES[scale];
  const keys = (event: KeyboardEvent<HTMLFieldSetElement>) => {
    const said = scoreOfKey(event.key, grades.length);
    if (said === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    onScore(said);
    nextCortex(event.currentTarget)?.focus();
  };
  const options = [
    ...grades.map((words, i) => [i + 1, String(i + 1), words] as const),
    [null, '–', 'not seen'] as const,
  ];
  return (
    <fieldset className="scores-cortex" onKeyDown={keys}>
      <legend>{capital(cortex)}</legend>
      <span className="choice">
        {options.map(([value, word, meaning]) => (
          <label key={word} title={meaning}>
            <input
              type="radio"
              name={name}
              aria-label={value === null ? meaning : `${word}, ${meaning}`}
              checked={score === value}
              onChange={() => onScore(value)}
            />
            {word}
          </label>
        ))}
      </span>
    </fieldset>
  );
}

/** The scores of the cortex that follows in the same visit. */
const nextCortex = (field: HTMLElement): HTMLInputElement | null =>
  field.nextElementSibling?.querySelector<HTMLInputElement>('input') ?? null;

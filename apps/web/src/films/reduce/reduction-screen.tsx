/** Reducing the fracture on the screen: both films side by side, the numbers that fall, and the bone kept for the plan. */
import './reduction.css';
import type { CaseState } from '@bonewright/casebook';
import { useState } from 'react';
import { ReasonDialog } from '../../form/reason-dialog.tsx';
import { useUndoKeys } from '../../plan/edit/use-undo-keys.ts';
import type { Append } from '../../sync/new-event.ts';
import { capital } from '../../words/patient.ts';
import { useFilmPictures } from '../picture/use-film-pictures.ts';
import { NOT_MOVED } from './moves.ts';
import { ReductionFields } from './reduction-fields.tsx';
import { ReductionNumbers } from './reduction-numbers.tsx';
import { ReductionPlate } from './reduction-plate.tsx';
import { type Reducing, useReducing, VIEWS, type ViewIndex } from './use-reducing.ts';

interface ReductionScreenProps {
  readonly state: CaseState;
  readonly append: Append;
  readonly onClose: () => void;
}

export function ReductionScreen(props: ReductionScreenProps) {
  const reducing = useReducing(props.state);
  if (!reducing)
    return (
      <p>
        The two films are not joined into a bone any more.{' '}
        <button type="button" className="button" onClick={props.onClose}>
          Back to the films
        </button>
      </p>
    );
  return <Reduction {...props} reducing={reducing} />;
}

function Reduction({ state, append, onClose, reducing }: ReductionScreenProps & { readonly reducing: Reducing }) {
  const [marking, setMarking] = useState<ViewIndex | null>(null);
  const pictures = useFilmPictures(reducing.films);
  useUndoKeys(reducing);
  const { before, now, move, ends } = reducing;
  return (
    <div className="reduction">
      {([0, 1] as const).map((view) => (
        <section key={view} className="reduction-film" aria-label={`${capital(VIEWS[view])}, reduced`}>
          <header className="side-head">
            <h2>{capital(VIEWS[view])}</h2>
            <span className="quiet">{reducing.films[view].clicks?.value.columnTowards} to the right</span>
          </header>
          <ReductionPlate
            view={view}
            reducing={reducing}
            picture={pictures.get(reducing.films[view].filmId) ?? null}
            isMarking={marking === view}
            onMarked={() => setMarking(null)}
          />
          <p className="reduction-under">
            <button
              type="button"
              className="button-small"
              aria-pressed={marking === view}
              onClick={() => setMarking(marking === view ? null : view)}
            >
              {ends[view] ? 'mark the broken ends again' : 'mark the broken ends'}
            </button>
          </p>
        </section>
      ))}
      <section className="reduction-side" aria-labelledby="reduction-title">
        <h2 id="reduction-title">Reduce on the screen</h2>
        <p className="caption">
          The plan takes the bone as it is kept here. Until one is kept it takes the two parts end to end in one line.
        </p>
        <p className="reduction-acts">
          <button type="button" className="button-small" disabled={!reducing.canUndo} onClick={reducing.undo}>
            undo
          </button>
          <button type="button" className="button-small" disabled={!reducing.canRedo} onClick={reducing.redo}>
            redo
          </button>
          <button type="button" className="button-small" onClick={reducing.full}>
            in one line
          </button>
          <button
            type="button"
            className="button-small"
            disabled={JSON.stringify(move) === JSON.stringify(NOT_MOVED)}
            onClick={() => reducing.moveTo(NOT_MOVED)}
          >
            as the films show it
          </button>
        </p>
        <ReductionNumbers before={before} now={now} />
        <ReductionFields reducing={reducing} />
        {now.warnings.map((warning) => (
          <p key={warning} className="caption">
            {capital(warning)}.
          </p>
        ))}
        <KeepReduction state={state} append={append} onClose={onClose} reducing={reducing} />
      </section>
    </div>
  );
}

const REASONS = ['seen wrongly before', 'it can be reduced better', 'it cannot be reduced as far', 'tried only'];

/** The first is kept at once; another in its place says why. */
function KeepReduction({ state, append, onClose, reducing }: ReductionScreenProps & { readonly reducing: Reducing }) {
  const [isAsking, ask] = useState(false);
  const { toKeep } = reducing;
  const isCorrection = state.reduction !== null;
  return (
    <p className="reduction-keep">
      <button
        type="button"
        className="button button-main"
        disabled={toKeep === null}
        onClick={() => (isCorrection ? ask(true) : toKeep && append([toKeep]))}
      >
        {toKeep === null ? 'Kept for the plan' : 'Keep this bone for the plan'}
      </button>
      <button type="button" className="button" onClick={onClose}>
        Back to the films
      </button>
      {isAsking && (
        <ReasonDialog
          title="Another reduction was kept before"
          common={REASONS}
          actions={[{ word: 'Keep this one', act: (why) => toKeep && append([{ ...toKeep, why }]) }]}
          onClose={() => ask(false)}
        />
      )}
    </p>
  );
}

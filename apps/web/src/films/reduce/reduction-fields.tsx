/** The move of the distal part in numbers: every way it can go, typed or stepped with the arrow keys. */
import { NumberField } from '../../plan/edit/number-field.tsx';
import { capital } from '../../words/patient.ts';
import { movedOn } from './moves.ts';
import type { Reducing, ViewIndex } from './use-reducing.ts';

const MM_STEP = 0.1;
const DEG_STEP = 0.5;
const WORDS = [
  { view: 'craniocaudal', towards: 'medially' },
  { view: 'mediolateral', towards: 'cranially' },
] as const;

export function ReductionFields({ reducing }: { readonly reducing: Reducing }) {
  const { move, before, moveTo } = reducing;
  const canTurn = before.rotationDeg.value !== null;
  const canLengthen = before.shorteningMm.value !== null;
  return (
    <div className="reduction-fields">
      {([0, 1] as const).map((view) => (
        <ViewFields key={view} view={view} reducing={reducing} />
      ))}
      <fieldset>
        <legend>Both</legend>
        <NumberField
          label="Drawn out"
          unit="mm"
          step={MM_STEP}
          value={move.lengthMm}
          onChange={(lengthMm) => moveTo({ ...move, lengthMm }, 'length')}
        />
        {canTurn ? (
          <NumberField
            label="Turned back"
            unit="deg"
            step={1}
            value={move.rotationDeg}
            onChange={(rotationDeg) => moveTo({ ...move, rotationDeg }, 'turn')}
          />
        ) : (
          <p className="caption">A turn about the bone cannot be told: {before.rotationDeg.why}.</p>
        )}
      </fieldset>
      {!canLengthen && (
        <p className="caption">
          Until the broken ends are marked nothing says how much it is shortened, and a draw changes no number.
        </p>
      )}
    </div>
  );
}

function ViewFields({ view, reducing: { move, moveTo } }: { readonly view: ViewIndex; readonly reducing: Reducing }) {
  const { view: name, towards } = WORDS[view];
  return (
    <fieldset>
      <legend>{capital(name)}</legend>
      <NumberField
        label={`Shift ${towards}`}
        unit="mm"
        step={MM_STEP}
        value={move.translationMm[view]}
        onChange={(mm) => moveTo(movedOn(move, view, { acrossMm: mm - move.translationMm[view] }), `shift ${view}`)}
      />
      <NumberField
        label={`Bend ${towards}`}
        unit="deg"
        step={DEG_STEP}
        value={move.angulationDeg[view]}
        onChange={(deg) => moveTo(movedOn(move, view, { deg: deg - move.angulationDeg[view] }), `bend ${view}`)}
      />
    </fieldset>
  );
}

/** The three points as a list: which landmark each is, and a button to place it. */
import { FieldWhy } from '../../form/field.tsx';
import { figure } from '../../plan/words.ts';
import { POINTS } from './later-draft.ts';
import type { LayingOver } from './use-placing.ts';

interface PointListProps {
  readonly laying: LayingOver;
  /** A point was asked for: the film is where it is placed. */
  readonly onAsk: () => void;
}

export function PointList({ laying, onAsk }: PointListProps) {
  const { points, landmarks, placing, why, wanted, want, choose } = laying;
  return (
    <div className="later-points">
      <ol>
        {points.map(({ landmark, at }, i) => (
          <li key={i}>
            <select aria-label={`Point ${i + 1}`} value={landmark} onChange={(event) => choose(i, event.target.value)}>
              {landmarks.map(({ id, words }) => (
                <option key={id} value={id} disabled={points.some((other, k) => k !== i && other.landmark === id)}>
                  {words}
                </option>
              ))}
            </select>
            <button
              type="button"
              className="button-small"
              aria-pressed={wanted === i}
              onClick={() => {
                want(i);
                onAsk();
              }}
            >
              {at === null ? `Place point ${i + 1}` : `Place ${i + 1} again`}
            </button>
          </li>
        ))}
      </ol>
      {why && <FieldWhy why={`The plan cannot be laid over this film: ${why}.`} />}
      {placing && (
        <p className="quiet">
          {`The points miss the plan by ${figure(placing.residualMm, 2)} mm in the mean. 1 mm of the plan is ${figure(
            placing.pxPerMm.value ?? 0,
            2,
          )} pixels of this film.`}
        </p>
      )}
      {placing?.warnings.map((warning) => (
        <FieldWhy key={warning} why={`${warning.charAt(0).toUpperCase()}${warning.slice(1)}.`} />
      ))}
      {!placing && !why && (
        <p className="quiet">
          {`Click the ${POINTS} places on the film, or move the crosshair with the arrow keys and press Enter. Bone first: a pin gone astray would take the plan with it.`}
        </p>
      )}
    </div>
  );
}

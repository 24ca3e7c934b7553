/** Where the pin in hand really went: distance from a landmark, angle, lean, walls; and what that does to the others. */
import { type Advice, type AsPlaced, type Case, directionWords, type InTheatre } from '@bonewright/construct';
import { useId } from 'react';
import { Choice } from '../form/choice.tsx';
import { figure, tiltWords } from '../plan/words.ts';
import { atDistance, distanceOf, type EntryDraft, landmarksFor } from './entry-draft.ts';
import type { PinInHand } from './pin-by-pin.tsx';
import { Stepper } from './stepper.tsx';

interface EntryProps {
  readonly patientCase: Case;
  readonly theatre: InTheatre;
  readonly hand: PinInHand;
  readonly answer: AsPlaced | null;
  readonly isSettled: boolean;
  readonly onChange: (draft: EntryDraft) => void;
}

const WALLS = [
  ['2', 'both walls'],
  ['1', 'near wall only'],
] as const;
const STEP_MM = 0.5;
const STEP_DEG = 5;

export function Entry({ patientCase, theatre, hand, answer, isSettled, onChange }: EntryProps) {
  const { draft, pin, wantedMm } = hand;
  const { lengthMm } = patientCase.bone;
  const id = useId();
  const landmarks = landmarksFor(theatre, pin, draft.sMm);
  const from = landmarks.includes(draft.from) ? draft.from : 'proximal end';
  const known = { ...draft, from };
  return (
    <section aria-labelledby="entry-title" className="theatre-column">
      <h3 id="entry-title" className="theatre-now">
        As placed
      </h3>
      <Stepper
        label={`Distance of P${pin} from the ${from}`}
        isLabelHidden
        isLarge
        unit="mm"
        step={STEP_MM}
        decimals={1}
        value={distanceOf(known, theatre, lengthMm)}
        onChange={(mm) => onChange(atDistance(known, theatre, lengthMm, mm))}
      />
      <div className="field theatre-from">
        <label htmlFor={id}>mm from</label>
        <span className="field-box">
          <select id={id} value={from} onChange={(event) => onChange({ ...draft, from: event.target.value })}>
            {landmarks.map((each) => (
              <option key={each} value={each}>
                {each.startsWith('P') ? each : `the ${each}`}
              </option>
            ))}
          </select>
        </span>
      </div>
      <ul className="theatre-after" aria-live="polite">
        <li>{offWords(draft.sMm - wantedMm, hand.isIn)}</li>
        {isSettled && answer ? <Others remaining={answer.remaining} /> : <li>planning the others again</li>}
        <li>{fractureWords(patientCase, draft.sMm)}</li>
      </ul>
      <details className="theatre-aim" open={hand.isIn || undefined}>
        <summary>
          {directionWords(draft.aboutDeg)}, {tiltWords(draft.tiltDeg)},{' '}
          {draft.cortices === 2 ? 'both walls' : 'near wall only'}: change
        </summary>
        <Stepper
          label="About the bone, 0 medial, 90 cranial"
          unit="degrees"
          step={STEP_DEG}
          decimals={0}
          value={draft.aboutDeg}
          onChange={(aboutDeg) => onChange({ ...draft, aboutDeg: within(aboutDeg, HALF_TURN) })}
        />
        <Stepper
          label="Lean, outer end distal above 0"
          unit="degrees"
          step={STEP_DEG}
          decimals={0}
          value={draft.tiltDeg}
          onChange={(tiltDeg) => onChange({ ...draft, tiltDeg: within(tiltDeg, MOST_TILT) })}
        />
        <Choice
          label="Depth"
          options={WALLS}
          value={draft.cortices === 2 ? '2' : '1'}
          onChange={(walls) => onChange({ ...draft, cortices: walls === '2' ? 2 : 1 })}
        />
      </details>
    </section>
  );
}

/** The next pin's advice in full, of the others only those that move. */
function Others({ remaining }: { readonly remaining: readonly Advice[] }) {
  const [next, ...later] = remaining;
  if (!next) return <li>no pin is left to plan</li>;
  const moved = later.filter(({ sMm, plannedMm }) => sMm !== plannedMm);
  const stay = later.length - moved.length;
  return (
    <>
      {[next, ...moved].map(({ pin, because, sMm, plannedMm }) => (
        <li key={pin} className={sMm === plannedMm ? undefined : 'theatre-moves'}>
          {because}
        </li>
      ))}
      {stay > 0 && <li>{stay === 1 ? 'The other one stays.' : `The other ${stay} stay.`}</li>}
    </>
  );
}

const HALF_TURN = 180;
const MOST_TILT = 60;
const SAME_MM = 0.05;
const within = (deg: number, most: number): number => Math.min(most, Math.max(-most, deg));

function offWords(offMm: number, isIn: boolean): string {
  if (Math.abs(offMm) < SAME_MM) return isIn ? 'as it was entered' : 'where it was wanted';
  const way = offMm > 0 ? 'distal' : 'proximal';
  return `${figure(Math.abs(offMm))} mm ${way} of ${isIn ? 'what was entered' : 'where it was wanted'}`;
}

function fractureWords({ fracture: { fromMm, toMm } }: Case, sMm: number): string {
  if (sMm >= fromMm && sMm <= toMm) return 'in the broken stretch';
  return `${figure(sMm < fromMm ? fromMm - sMm : sMm - toMm)} mm from the fracture`;
}

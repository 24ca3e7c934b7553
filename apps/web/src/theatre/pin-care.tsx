/** What the hand must know before it drills here: pilot hole, depth stop, and what could go wrong. */
import type { Check } from '@bonewright/construct';
import { entry } from '@bonewright/evidence';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { figure } from '../plan/words.ts';
import { type Place, wallsWords } from './find-place.ts';

interface PinCareProps {
  readonly place: Place;
  readonly checks: readonly Check[];
}

const PILOT = entry('rule.pilot.under-core');
const PILOT_KNOWN = PILOT.status === 'memory' ? 'from memory' : PILOT.status;

export function PinCare({ place: { found, plannedPin }, checks }: PinCareProps) {
  return (
    <section aria-labelledby="care-title" className="theatre-care">
      <p className="theatre-note">
        Pilot hole <b>{figure(found.pilotMm)} mm</b>, {PILOT_KNOWN}. Stop <b>{figure(found.pastNearWallMm)} mm</b> past
        the near wall, {wallsWords(plannedPin.cortices ?? 2)}.
      </p>
      <h3 id="care-title">What could go wrong here</h3>
      {checks.length === 0 && <p className="theatre-note">No check of this place asks for care.</p>}
      <ul className="theatre-checks">
        {checks.map(({ id, verdict, because }) => (
          <li key={id}>
            <VerdictMark verdict={verdict} />
            <span>
              <span className="sr-only">{verdict}: </span>
              {because}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Where the figure of the pilot hole comes from. */
export const PilotSource = () => (
  <p className="caption">{`Pilot hole: ${PILOT.name}, ${PILOT.value} ${PILOT.unit}. ${PILOT.source.title}, ${PILOT.source.year}. ${PILOT.note}`}</p>
);

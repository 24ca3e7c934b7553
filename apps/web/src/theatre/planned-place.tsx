/** Where the pin in hand should go: from two landmarks, direction, wire, pilot hole, depth, and what asks for care here. */
import { type Case, type Distance, type DrawerPin, directionWords } from '@bonewright/construct';
import { figure, KIND_WORDS, tiltWords } from '../plan/words.ts';
import { type Place, wallsWords } from './find-place.ts';
import type { PinInHand } from './pin-by-pin.tsx';
import { PilotSource } from './pin-care.tsx';

interface PlannedPlaceProps {
  readonly patientCase: Case;
  readonly hand: PinInHand;
  readonly place: Place;
}

export function PlannedPlace({ patientCase, hand, place }: PlannedPlaceProps) {
  const { found, plannedPin, numbers, advice } = place;
  const { wantedMm } = hand;
  const wire = patientCase.drawer.pins.find(({ id }) => id === plannedPin.drawerId);
  const [first, second] = found.landmarks;
  const isMoved = Math.abs(wantedMm - plannedPin.sMm) > SAME_MM && !hand.isIn;
  return (
    <section aria-labelledby="planned-title" className="theatre-column">
      <h3 id="planned-title">
        {hand.isIn ? 'Stands' : isMoved ? 'Now' : 'Plan'}, from the {first.from}
      </h3>
      <p className="theatre-figure">
        {figure(first.mm)} <span className="theatre-unit">mm</span>
      </p>
      <p className="theatre-second">
        <b>{figure(second.mm)} mm</b> from {landmarkWords(second, numbers)}
      </p>
      <ul className="theatre-orders">
        <li>{wire ? <WireOrder wire={wire} /> : plannedPin.drawerId}</li>
        <li>
          <Direction words={directionWords(plannedPin.aboutDeg)} />
        </li>
        <li>
          <b>{figure(found.pastNearWallMm)} mm</b> deep
        </li>
      </ul>
      {isMoved && advice && <p className="theatre-note theatre-moves">{advice.because}</p>}
      {advice?.sMm === null && <p className="theatre-note">{advice.because} Leave it out, or put it where you can.</p>}
      <dl className="theatre-small">
        <Fact name="lean" value={tiltWords(plannedPin.tiltDeg)} />
        <Fact
          name="depth stop"
          value={`${figure(found.pastNearWallMm)} mm past the near wall, ${wallsWords(plannedPin.cortices ?? 2)}`}
        />
        {found.pastSkinMm !== null && <Fact name="from the skin" value={`${figure(found.pastSkinMm)} mm in`} />}
        <Fact name="cut to" value={`${figure(found.cutLengthMm)} mm`} />
      </dl>
      <PilotSource />
    </section>
  );
}

/** `from lateral`; one that says what it is off from needs no more words. */
function Direction({ words }: { readonly words: string }) {
  return (
    <>
      {words.includes(' ') ? '' : 'from '}
      <b>{words}</b>
    </>
  );
}

function WireOrder({ wire }: { readonly wire: DrawerPin }) {
  if (wire.kind === 'needle' && wire.gauge !== undefined)
    return (
      <>
        needle <b>{wire.gauge} G</b>
      </>
    );
  return (
    <>
      {wire.kind === 'smooth' ? 'wire' : 'pin'} <b>{figure(wire.diameterMm)}</b> {wireWords(wire.kind)}
    </>
  );
}

const SAME_MM = 0.05;

const wireWords = (kind: keyof typeof KIND_WORDS): string => (kind === 'smooth' ? 'smooth' : KIND_WORDS[kind]);

const landmarkWords = ({ from, index }: Distance, numbers: readonly number[]): string =>
  from === 'pin' && index !== undefined ? `P${numbers[index]}` : `the ${from}`;

function Fact({ name, value }: { readonly name: string; readonly value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}

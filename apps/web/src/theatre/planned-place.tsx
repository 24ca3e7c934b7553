/** Where the pin in hand should go: from two landmarks, direction, wire, pilot hole, depth, and what asks for care here. */
import {
  type AsPlaced,
  type Case,
  type Check,
  type Construct,
  type Distance,
  type DrawerPin,
  directionWords,
  findPin,
  type InTheatre,
} from '@bonewright/construct';
import { entry } from '@bonewright/evidence';
import { VerdictMark } from '../drawing/verdict-mark.tsx';
import { figure, KIND_WORDS, tiltWords } from '../plan/words.ts';
import type { PinInHand } from './pin-by-pin.tsx';
import { withPinIn } from './with-pin-in.ts';

interface PlannedPlaceProps {
  readonly patientCase: Case;
  readonly planned: Construct;
  readonly theatre: InTheatre;
  readonly hand: PinInHand;
  readonly standing: AsPlaced;
  readonly checks: readonly Check[];
}

export function PlannedPlace({ patientCase, planned, theatre, hand, standing, checks }: PlannedPlaceProps) {
  const { pin, wantedMm } = hand;
  const plannedPin = planned.pins[pin - 1]!;
  const { construct, index, inAlready, numbers } = withPinIn(standing, planned, theatre, pin, wantedMm);
  const found = findPin(patientCase, construct, index, inAlready);
  const wire = patientCase.drawer.pins.find(({ id }) => id === plannedPin.drawerId);
  const [first, second] = found.landmarks;
  const advice = standing.remaining.find((each) => each.pin === pin);
  const walls = (plannedPin.cortices ?? 2) === 2 ? 'through both' : 'not through the far one';
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
      <h3>What could go wrong here</h3>
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
      <dl className="theatre-small">
        <Fact name="lean" value={tiltWords(plannedPin.tiltDeg)} />
        <Fact name="depth stop" value={`${figure(found.pastNearWallMm)} mm past the near wall, ${walls}`} />
        {found.pastSkinMm !== null && <Fact name="from the skin" value={`${figure(found.pastSkinMm)} mm in`} />}
        <Fact name="cut to" value={`${figure(found.cutLengthMm)} mm`} />
        <Fact
          name="pilot hole"
          value={`${figure(found.pilotMm)} mm, ${PILOT.status === 'memory' ? 'from memory' : PILOT.status}`}
        />
      </dl>
      <p className="caption">{`Pilot hole: ${PILOT.name}, ${PILOT.value} ${PILOT.unit}. ${PILOT.source.title}, ${PILOT.source.year}. ${PILOT.note}`}</p>
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
const PILOT = entry('rule.pilot.under-core');

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

/** Pins found on a later film against the plan, and each taken over as placed with one press. */
import type { CaseState } from '@bonewright/casebook';
import { type PlacedPin, placedFromFilm } from '@bonewright/construct';
import type { PinAgainstPlan } from '@bonewright/film';
import { VerdictWord } from '../../drawing/verdict-mark.tsx';
import { Opens } from '../../plan/margins/opens.tsx';
import { figure } from '../../plan/words.ts';
import type { Append } from '../../sync/new-event.ts';
import { FindingCell, FindingReasons, worstOf } from './finding-cell.tsx';
import type { PlanInViews } from './use-plan-figure.ts';

interface PinsTableProps {
  readonly state: CaseState;
  readonly plan: PlanInViews;
  readonly view: 'craniocaudal' | 'mediolateral';
  readonly fileName: string;
  /** Null while the pins are looked for. */
  readonly against: readonly PinAgainstPlan[] | null;
  readonly append: Append;
}

export function PinsTable({ against, ...props }: PinsTableProps) {
  if (!against)
    return (
      <p className="quiet" role="status">
        Looking for the pins
      </p>
    );
  return (
    <>
      <table className="later-table">
        <caption className="sr-only">Pins on the film against the plan</caption>
        <thead>
          <tr>
            <th scope="col">pin</th>
            <th scope="col">
              place <span className="unit">mm distal</span>
            </th>
            <th scope="col">
              tilt <span className="unit">deg</span>
            </th>
            <th scope="col">
              depth <span className="unit">mm deeper</span>
            </th>
            <th scope="col">verdict</th>
            <th scope="col">as placed</th>
          </tr>
        </thead>
        <tbody>
          {against.map((pin) => (
            <PinRow key={pin.name} pin={pin} {...props} />
          ))}
        </tbody>
      </table>
      <Opens className="later-opens" summary="Why, limit by limit, and where the limits come from">
        {() => <FindingReasons findings={against.flatMap(({ findings }) => findings)} />}
      </Opens>
    </>
  );
}

type PinRowProps = Omit<PinsTableProps, 'against'> & { readonly pin: PinAgainstPlan };

function PinRow({ pin, ...props }: PinRowProps) {
  const [place, tilt, depth] = pin.findings;
  const verdict = worstOf(pin.findings);
  if (pin.placeMm.value === null)
    return (
      <tr>
        <th scope="row">{pin.name}</th>
        <td colSpan={5} className="quiet">
          not found: {pin.placeMm.why}
        </td>
      </tr>
    );
  return (
    <tr>
      <th scope="row">
        {pin.name}
        {pin.diameterMm.value !== null && (
          <span className="caption">{`${figure(pin.diameterMm.value, 2)} mm thick`}</span>
        )}
      </th>
      <FindingCell finding={place} />
      <FindingCell finding={tilt} />
      <FindingCell finding={depth} />
      <td>{verdict ? <VerdictWord verdict={verdict} /> : <span className="quiet">not judged</span>}</td>
      <td>{pin.kind === 'pin' && <TakeOver pin={pin} {...props} />}</td>
    </tr>
  );
}

function TakeOver({ pin, state, plan, view, fileName, append }: PinRowProps) {
  const placed = asFound(pin, plan, view);
  if (!placed) return null;
  const before = state.theatre.pins.find((each) => each.pin === placed.pin)?.placed ?? null;
  const { sMm, tiltDeg, cortices } = placed;
  if (before && agrees(before.value, placed, pin))
    return <span className="quiet">{`recorded at ${figure(before.value.sMm)} mm, agrees`}</span>;
  const act = before ? 'Correct' : 'Take over';
  const words = `${figure(sMm)} mm, ${figure(tiltDeg, 0)}°, ${cortices === 2 ? 'both walls' : 'one wall'}`;
  return (
    <>
      <button
        type="button"
        className="button-small"
        aria-label={`${act} ${pin.name} as found: ${words}`}
        onClick={() => {
          const why = `read from the film ${fileName}`;
          append([{ kind: 'pin-placed', payload: placed, ...(before ? { why } : {}) }]);
        }}
      >
        {act}
      </button>
      <span className="caption later-words">
        {words}
        {before && `; recorded ${figure(before.value.sMm)} mm, ${figure(before.value.tiltDeg, 0)}°`}
      </span>
    </>
  );
}

const SURE_SDS = 2;

/** What is recorded lies within what the film can tell. */
const agrees = (recorded: PlacedPin, found: PlacedPin, { placeMm, tiltDeg }: PinAgainstPlan): boolean =>
  recorded.cortices === found.cortices &&
  Math.abs(recorded.sMm - found.sMm) <= SURE_SDS * (placeMm.sd ?? 0) &&
  Math.abs(recorded.tiltDeg - found.tiltDeg) <= Math.max(1, SURE_SDS * (tiltDeg.sd ?? 0));

const TENTHS = 10;

/** To a tenth of a millimetre and a whole degree: no finer than the film. */
function asFound(pin: PinAgainstPlan, plan: PlanInViews, view: PinsTableProps['view']): PlacedPin | null {
  const [placeMm, tiltDeg] = [pin.placeMm.value, pin.tiltDeg.value];
  if (placeMm === null || tiltDeg === null) return null;
  const seen = { placeMm, tiltDeg, depthMm: pin.depthMm.value };
  const number = Number(pin.name.slice(1));
  const placed = placedFromFilm(plan.figures[view], plan.construct, number, seen);
  return {
    ...placed,
    sMm: Math.round(placed.sMm * TENTHS) / TENTHS,
    tiltDeg: Math.round(placed.tiltDeg) + 0,
  };
}

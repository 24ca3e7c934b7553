/** One pin at a time: where it should go, where it went, what the margins are then. */
import type { CaseState } from '@bonewright/casebook';
import { type Case, type Construct, type InTheatre, inPlanNumbers } from '@bonewright/construct';
import { type ReactNode, useMemo, useState } from 'react';
import type { Engine } from '../plan/engine/engine.ts';
import { useAssessment } from '../plan/engine/use-assessment.ts';
import { figure } from '../plan/words.ts';
import type { Append } from '../sync/new-event.ts';
import { useDraft } from '../sync/use-draft.ts';
import { AllDone } from './all-done.tsx';
import { Entry } from './entry.tsx';
import { type EntryDraft, placedOf, readDraft } from './entry-draft.ts';
import { findPlace } from './find-place.ts';
import { doingOf, firstToDo, inTheatreOf, withPlaced } from './in-theatre.ts';
import { MarginThen } from './margin-then.tsx';
import { PinActions } from './pin-actions.tsx';
import { PinCare } from './pin-care.tsx';
import { PinStrip } from './pin-strip.tsx';
import { PlannedPlace } from './planned-place.tsx';
import { TheatreHead } from './theatre-head.tsx';
import { TheatreRuler } from './theatre-ruler.tsx';
import { useAsPlaced } from './use-as-placed.ts';

interface PinByPinProps {
  readonly state: CaseState;
  readonly append: Append;
  readonly engine: Engine;
  readonly patientCase: Case;
  readonly planned: Construct;
  readonly nav: ReactNode;
  readonly onTable: () => void;
}

/** Everything about the pin in hand. */
export interface PinInHand {
  readonly pin: number;
  /** Where it should go now, else where it stands. */
  readonly wantedMm: number;
  readonly draft: EntryDraft;
  readonly isIn: boolean;
  readonly isLeftOut: boolean;
}

export function PinByPin({ state, append, engine, patientCase, planned, nav, onTable }: PinByPinProps) {
  const count = planned.pins.length;
  const { theatre: recorded } = state;
  const theatre = useMemo(() => inTheatreOf({ theatre: recorded }, count), [recorded, count]);
  const [wanted, select] = useState<number | null>(null);
  const pin = wanted ?? firstToDo(theatre, count);
  const standing = useAsPlaced(engine, 'search', patientCase, planned, theatre);
  const kept = useDraft(`theatre.${state.caseId}`, readDraft);
  const advice = standing.answer?.remaining.find((each) => each.pin === pin);
  const hand = pin === null ? null : inHand(planned, theatre, pin, advice?.sMm ?? null, kept.value);
  const trial = useTrial(theatre, hand);
  const then = useAsPlaced(engine, 'what-if', patientCase, planned, trial);
  const answer = (trial ? then : standing).answer;
  const isSettled = (trial ? then : standing).about === (trial ?? theatre);
  const assessment = useAssessment(engine, patientCase, answer?.construct ?? null);
  const isFull = isSettled && assessment.exactness === 'full' && assessment.construct === answer?.construct;
  const plan = useMemo(
    () => (assessment.plan && answer ? inPlanNumbers(assessment.plan, answer.numbers) : null),
    [assessment.plan, answer],
  );
  const shown = useShown(planned, theatre, hand, answer);
  const found = hand && standing.answer && findPlace(patientCase, planned, theatre, hand, standing.answer);
  const doing = (each: number) => (each === pin ? 'now' : doingOf(theatre, each, pin ?? 0));
  const why = standing.why ?? then.why;
  const next = pin === null ? null : firstToDo(withPlaced(theatre, { ...placedOf(hand!.draft), pin }), count);
  return (
    <div className="theatre-pins">
      <TheatreHead title={titleOf(hand, count)} nav={nav} />
      <div className="theatre-bone">
        <TheatreRuler
          patientCase={patientCase}
          construct={shown.construct}
          numbers={shown.numbers}
          doing={doing}
          plannedMm={pin === null ? null : planned.pins[pin - 1]!.sMm}
          says={rulerSays(theatre, pin, count)}
        />
        <div className="theatre-beside">
          <PinStrip
            {...{ count, pin, theatre, planned }}
            wantedMm={hand?.wantedMm ?? null}
            remaining={answer?.remaining ?? []}
            onSelect={select}
          />
          {found && (
            <PinCare
              place={found}
              checks={(plan?.checks ?? []).filter((check) => check.pin === pin && check.verdict !== 'good')}
            />
          )}
        </div>
      </div>
      {why && <p className="field-why">{why}</p>}
      <div className="theatre-three">
        {hand && found && <PlannedPlace {...{ patientCase, hand }} place={found} />}
        {hand && <Entry {...{ patientCase, theatre, hand, answer }} isSettled={isSettled} onChange={kept.set} />}
        {!hand && <AllDone theatre={recorded} onTable={onTable} />}
        <MarginThen plan={plan} isFull={isFull} inPlan={state.construct?.value.summary?.worst.p05 ?? null} />
      </div>
      {hand && (
        <PinActions
          {...{ theatre, hand, next, append }}
          onDone={() => {
            kept.clear();
            select(null);
          }}
          onBack={select}
        />
      )}
      <p className="quiet theatre-caution">
        Places are advice from films that may be off: the surgeon sees the limb and decides. An empty hole weakens the
        bone as a pin does and is not in these margins.
      </p>
    </div>
  );
}

function titleOf(hand: PinInHand | null, count: number): string {
  if (!hand) return 'All pins are done';
  if (hand.isLeftOut) return `P${hand.pin} was left out`;
  return hand.isIn ? `P${hand.pin} is in` : `Pin ${hand.pin} of ${count}`;
}

function inHand(
  planned: Construct,
  theatre: InTheatre,
  pin: number,
  advisedMm: number | null,
  kept: EntryDraft | null,
): PinInHand {
  const at = planned.pins[pin - 1]!;
  const stands = theatre.placed.find((each) => each.pin === pin);
  const wantedMm = stands?.sMm ?? advisedMm ?? at.sMm;
  const { aboutDeg, tiltDeg, cortices = 2 } = stands ?? at;
  const fresh: EntryDraft = { pin, sMm: wantedMm, aboutDeg, tiltDeg, cortices, from: 'proximal end' };
  return {
    pin,
    wantedMm,
    draft: kept?.pin === pin ? kept : fresh,
    isIn: stands !== undefined,
    isLeftOut: theatre.leftOut.includes(pin),
  };
}

/** The record with the draft as if it were entered; the same object while it says the same. */
function useTrial(theatre: InTheatre, hand: PinInHand | null): InTheatre | null {
  const text = hand && !hand.isLeftOut ? JSON.stringify(withPlaced(theatre, placedOf(hand.draft))) : null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text says all there is in it
  return useMemo(() => (text && hand ? withPlaced(theatre, placedOf(hand.draft)) : null), [text]);
}

/** What is drawn: the last answer, with the pin in hand where it is being typed. */
function useShown(
  planned: Construct,
  theatre: InTheatre,
  hand: PinInHand | null,
  answer: { readonly construct: Construct; readonly numbers: readonly number[] } | null,
) {
  const all = planned.pins.map((_, i) => i + 1).filter((pin) => !theatre.leftOut.includes(pin));
  const numbers = answer?.numbers ?? all;
  const pins = answer?.construct.pins ?? all.map((pin) => planned.pins[pin - 1]!);
  const draft = hand?.draft;
  const key = JSON.stringify([pins, draft, numbers]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text says all there is in it
  return useMemo(() => {
    const moved = pins.map((pin, i) => (draft && numbers[i] === draft.pin ? { ...pin, ...shape(draft) } : pin));
    return { construct: { ...planned, pins: moved }, numbers };
  }, [key, planned]);
}

const shape = ({ sMm, aboutDeg, tiltDeg, cortices }: EntryDraft) => ({ sMm, aboutDeg, tiltDeg, cortices });

function rulerSays({ placed, leftOut }: InTheatre, pin: number | null, count: number): string {
  const ins = placed.map((each) => `P${each.pin} in at ${figure(each.sMm)} millimetres`);
  const outs = leftOut.map((each) => `P${each} left out`);
  const now = pin === null ? [] : [`P${pin} of ${count} in hand`];
  return ['The bone along its ruler', ...ins, ...outs, ...now].join('; ');
}

/** The worst margin with the pin where it is said to be, large enough to read across the table. */
import { LOAD_WORDS, type Plan } from '@bonewright/construct';
import { VerdictMark, VerdictWord } from '../drawing/verdict-mark.tsx';
import { MarginAxis, MarginBar } from '../plan/margins/margin-bar.tsx';
import { marginsWorstFirst } from '../plan/margins/worst.ts';
import { figure } from '../plan/words.ts';

interface MarginThenProps {
  readonly plan: Plan | null;
  /** With spread, of what is on the screen; otherwise figures are still moving. */
  readonly isFull: boolean;
  /** What the chosen plan promised; null where it was not assessed. */
  readonly inPlan: number | null;
}

export function MarginThen({ plan, isFull, inPlan }: MarginThenProps) {
  if (!plan)
    return (
      <section aria-labelledby="margin-title" className="theatre-column">
        <h3 id="margin-title">Worst margin then</h3>
        <p className="theatre-note">working it out</p>
      </section>
    );
  const [worst, ...others] = marginsWorstFirst(plan);
  const { load, margin, verdict } = worst!;
  const stops = plan.checks.filter((check) => check.verdict === 'stop');
  return (
    <section aria-labelledby="margin-title" className="theatre-column">
      <h3 id="margin-title">Worst margin then</h3>
      <p className={isFull ? 'theatre-figure' : 'theatre-figure theatre-moving'} role="status">
        {figure(margin.p05, 2)} <VerdictWord verdict={verdict} />
      </p>
      <MarginBar
        margin={margin}
        verdict={verdict}
        isTall
        says={`${LOAD_WORDS[load]}: 5 of 100 trials fall below ${figure(margin.p05, 2)}, half below ${figure(margin.p50, 2)}`}
      />
      <MarginAxis />
      <p className="theatre-note">
        {LOAD_WORDS[load]}; weakest: {margin.weakest}
      </p>
      {inPlan !== null && <p className="theatre-note quiet-ink">was {figure(inPlan, 2)} in the plan</p>}
      {!isFull && <p className="theatre-note quiet-ink">figures still moving</p>}
      <ul className="theatre-others" aria-label="The other margins">
        {others.map((other) => (
          <li key={other.load}>
            <VerdictMark verdict={other.verdict} />
            <span className="sr-only">{other.verdict}: </span>
            <b>{figure(other.margin.p05, 2)}</b> {LOAD_WORDS[other.load]}
          </li>
        ))}
      </ul>
      <ul className="theatre-checks">
        {stops.map(({ id, pin, because }) => (
          <li key={`${id} ${pin ?? ''}`}>
            <VerdictMark verdict="stop" />
            <span>
              <span className="sr-only">stop: </span>
              {because}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

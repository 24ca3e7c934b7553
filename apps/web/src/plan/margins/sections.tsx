/** Below the margins: what would help most, what if, checks. */
import { byWorry, type Check, type Plan } from '@bonewright/construct';
import { VerdictWord } from '../../drawing/verdict-mark.tsx';
import { capital } from '../../words/patient.ts';
import type { Improvement, WhatIf } from '../engine/answers.ts';
import { figure } from '../words.ts';
import { EvidenceLines } from './evidence-lines.tsx';
import { Opens } from './opens.tsx';

interface HelpProps {
  readonly improvements: readonly Improvement[] | null;
  readonly now: number;
  readonly onApply: (improvement: Improvement) => void;
}

export function Help({ improvements, now, onApply }: HelpProps) {
  return (
    <section className="side-section">
      <h2>What would help most</h2>
      {improvements === null && <p className="quiet">trying changes</p>}
      {improvements?.length === 0 && <p className="quiet">No single change from this drawer gains anything.</p>}
      <ul className="rows">
        {improvements?.map((improvement) => (
          <li key={improvement.words} className="row">
            <span>{capital(improvement.words)}</span>
            <span className="row-figure">
              <span className="quiet">{`${figure(now, 2)} to `}</span>
              <strong>{figure(improvement.worstP05, 2)}</strong>
            </span>
            {improvement.construct ? (
              <button type="button" className="button-small" onClick={() => onApply(improvement)}>
                Apply<span className="sr-only">{`: ${improvement.words}`}</span>
              </button>
            ) : (
              <span className="quiet">measure</span>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

export function WhatIfs({ whatIfs }: { readonly whatIfs: readonly WhatIf[] | null }) {
  return (
    <section className="side-section">
      <header className="side-head">
        <h2>What if</h2>
        <span className="quiet">worst margin then</span>
      </header>
      {whatIfs === null && <p className="quiet">solving</p>}
      <ul className="rows">
        {whatIfs?.map(({ words, worstP05, verdict }) => (
          <li key={words} className="row">
            <span>{words}</span>
            <strong className="row-figure">{figure(worstP05, 2)}</strong>
            <VerdictWord verdict={verdict} />
          </li>
        ))}
      </ul>
    </section>
  );
}

export function Checks({ plan }: { readonly plan: Plan }) {
  const asked = plan.checks.filter(({ verdict }) => verdict !== 'good').toSorted(byWorry);
  const good = plan.checks.filter(({ verdict }) => verdict === 'good');
  const counted = (['good', 'watch', 'stop'] as const)
    .map((verdict) => [plan.checks.filter((check) => check.verdict === verdict).length, verdict] as const)
    .filter(([count]) => count > 0)
    .map(([count, verdict]) => `${count} ${verdict}`)
    .join(', ');
  return (
    <section className="side-section">
      <header className="side-head">
        <h2>Checks</h2>
        <span className="quiet">{counted}</span>
      </header>
      {asked.map((check) => (
        <CheckRow key={`${check.id} ${check.pin ?? ''}`} check={check} />
      ))}
      {good.length > 0 && (
        <Opens
          className="checks-good"
          summary={asked.length > 0 ? `${good.length} more are good` : `All ${good.length} are good`}
        >
          {() => good.map((check) => <CheckRow key={`${check.id} ${check.pin ?? ''}`} check={check} />)}
        </Opens>
      )}
    </section>
  );
}

function CheckRow({ check }: { readonly check: Check }) {
  const summary = (
    <>
      <VerdictWord verdict={check.verdict} word={check.because} />
      <span className="sr-only">{`, ${check.verdict}`}</span>
    </>
  );
  return (
    <Opens className="check" summary={summary}>
      {() => (
        <>
          <p className="check-limits">{limits(check)}</p>
          <EvidenceLines ids={check.evidence} />
        </>
      )}
    </Opens>
  );
}

function limits({ value, unit, watch, stop }: Check): string {
  const shown = (limit: number) => `${figure(limit, 2)}${unit === '1' ? '' : ` ${unit}`}`;
  return [
    value === null ? 'Not measured' : `Found ${shown(value)}`,
    watch !== null && `watch limit ${shown(watch)}`,
    stop !== null && `stop limit ${shown(stop)}`,
  ]
    .filter(Boolean)
    .join(', ');
}

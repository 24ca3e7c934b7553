/** One margin opened: the sentence a colleague would say, the numbers in it, what it rests on, what would improve it. */
import './why.css';
import { type Case, LOAD_WORDS, type LoadName, type Plan } from '@bonewright/construct';
import { useEffect, useRef } from 'react';
import { VerdictWord } from '../../drawing/verdict-mark.tsx';
import type { Improvement } from '../engine/answers.ts';
import { figure, threeFigures } from '../words.ts';
import { EvidenceLines } from './evidence-lines.tsx';
import { GoverningRule } from './governing-rule.tsx';
import { Histogram } from './histogram.tsx';
import { MarginAxis, MarginBar } from './margin-bar.tsx';
import { spreadWords } from './margin-list.tsx';
import { Help } from './sections.tsx';
import { Sensitivities } from './sensitivities.tsx';
import { marginsWorstFirst, type RankedMargin } from './worst.ts';

interface WhyProps {
  readonly patientCase: Case;
  readonly plan: Plan;
  readonly load: LoadName;
  /** The margin of every trial; null until they are counted. */
  readonly trials: readonly number[] | null;
  readonly improvements: readonly Improvement[] | null;
  readonly onApply: (improvement: Improvement) => void;
  readonly onBack: () => void;
}

export function Why({ patientCase, plan, load, trials, improvements, onApply, onBack }: WhyProps) {
  const { samples, seed } = patientCase;
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  const ranked = marginsWorstFirst(plan);
  const place = ranked.findIndex((margin) => margin.load === load);
  const margin = ranked[place];
  if (!margin) return null;
  return (
    <section className="why" aria-labelledby="why-title" onKeyDown={(event) => event.key === 'Escape' && onBack()}>
      <div className="why-left">
        <p className="why-trail">
          <button type="button" className="link" onClick={onBack}>
            Margins
          </button>
          {` / ${PLACES[place] ?? ''} of five / plan “${plan.label}”`}
        </p>
        <header className="why-head">
          <h2 id="why-title" ref={title} tabIndex={-1}>
            {LOAD_WORDS[load]}
          </h2>
          <VerdictWord verdict={margin.verdict} />
        </header>
        <p className="lead">{sentence(margin)}</p>
        <Histogram trials={trials} margin={margin.margin} />
        <MarginBar margin={margin.margin} verdict={margin.verdict} says={spreadWords(margin)} isTall />
        <MarginAxis />
        <Ends margin={margin} />
        <Sensitivities plan={plan} />
        <Help improvements={improvements} now={ranked[0]?.margin.p05 ?? 0} onApply={onApply} />
      </div>
      <div className="why-right">
        <Numbers margin={margin} />
        {margin.figures.governs && <GoverningRule rule={margin.figures.governs} />}
        <section className="side-section">
          <header className="side-head">
            <h2>What it rests on</h2>
            <span className="quiet">value, range, source, how known</span>
          </header>
          <EvidenceLines ids={margin.figures.evidence ?? []} />
        </section>
        <footer className="why-foot">
          <button type="button" className="button button-main" onClick={onBack}>
            Back to the plan
          </button>
          <span className="quiet">
            {`${samples} trials, seed ${seed} `}
            <kbd>Esc</kbd> back
          </span>
        </footer>
      </div>
    </section>
  );
}

const PLACES = ['worst', 'second', 'third', 'fourth', 'best'];

const OPENING: Readonly<Record<RankedMargin['verdict'], string>> = {
  good: 'It carries what is asked with room to spare',
  watch: 'It should carry what is asked, with little to spare',
  stop: 'It may not carry what is asked',
};

function sentence({ margin, verdict }: RankedMargin): string {
  const place = margin.weakest.charAt(0).toUpperCase() + margin.weakest.slice(1);
  return `${place} gives way first. ${OPENING[verdict]}: in 5 of 100 trials it keeps less than ${figure(margin.p05, 2)} times what is asked of it.`;
}

function Ends({ margin: { margin } }: { readonly margin: RankedMargin }) {
  const ends = [
    [margin.p05, '5 below'],
    [margin.p50, '50 below'],
    [margin.p95, '95 below'],
  ] as const;
  return (
    <dl className="why-ends">
      {ends.map(([value, word]) => (
        <div key={word}>
          <dd>{figure(value, 2)}</dd>
          <dt>{word}</dt>
        </div>
      ))}
    </dl>
  );
}

function Numbers({ margin: { figures } }: { readonly margin: RankedMargin }) {
  const rows: readonly (readonly [string, number | null, string])[] = [
    ['Stiffness, the secant at this load', figures.stiffness, figures.unit],
    ['Motion at the gap', figures.gapMotionMm, 'mm'],
    ['Strain in the gap', figures.gapStrainPercent, '%'],
    ['Peak stress in a pin', figures.peakPinMPa, 'MPa'],
    ['Peak stress in the IM pin', figures.peakImMPa, 'MPa'],
    ['Peak stress in the column', figures.peakColumnMPa, 'MPa'],
    ['Peak stress in the bone', figures.peakBoneMPa, 'MPa'],
  ];
  return (
    <section className="side-section">
      <header className="side-head">
        <h2>The numbers in it</h2>
        <span className="quiet">middle values; the trials vary all of them together</span>
      </header>
      <table className="numbers">
        <tbody>
          {rows.map(([name, value, unit]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>
                {value === null ? <span className="quiet">none here</span> : <strong>{threeFigures(value)}</strong>}
              </td>
              <td className="unit">{value === null ? '' : unit}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The frame's share of the load and its staged take-down, as the healing model has them; the vet decides. */
import { mayComeOff, type Stage, unionWeeksId, type Verdict } from '@bonewright/construct';
import { entry } from '@bonewright/evidence';
import { VerdictWord } from '../drawing/verdict-mark.tsx';
import { EvidenceLines } from '../plan/margins/evidence-lines.tsx';
import { Opens } from '../plan/margins/opens.tsx';
import { FAILS, WATCH } from '../plan/margins/verdict.ts';
import { figure } from '../plan/words.ts';
import type { HealingModel } from './healing.ts';

const percent = (share: number): string => `${figure(100 * share, 0)} %`;
const DAYS_PER_WEEK = 7;

export function LoadShare({ model }: { readonly model: HealingModel }) {
  const { shares, stages, lastDay, isByScore, patientCase } = model;
  const earliest = entry(earliestId(model));
  const isEarly = lastDay / DAYS_PER_WEEK < earliest.value;
  const ids = [
    'healing.load-share.frame-off',
    earliest.id,
    'healing.callus.first-modulus',
    'healing.callus.union-modulus',
    unionWeeksId(patientCase),
  ];
  return (
    <section aria-labelledby="share-title" className="load-share">
      <h3 id="share-title">What the frame still carries, by the healing model</h3>
      <table className="later-table">
        <caption className="sr-only">The frame's share of the load along the bone</caption>
        <thead>
          <tr>
            <th scope="col">visit</th>
            <th scope="col">by weeks alone</th>
            <th scope="col">by the films (mRUST)</th>
          </tr>
        </thead>
        <tbody>
          {shares.map(({ day, byWeeks, byScore }) => (
            <tr key={day}>
              <th scope="row">day {day}</th>
              <td className="later-figure">{percent(byWeeks)}</td>
              <td className="later-figure">{byScore === null ? 'no sum' : percent(byScore)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>Taken down step by step, on day {lastDay}</h3>
      <p className="quiet">
        {`Each step on top of those before it, ${isByScore ? 'callus by the score of the films' : 'callus by the weeks alone: nobody has scored these films'}. Margins are middle values.`}
      </p>
      <table className="later-table">
        <caption className="sr-only">Margins and load share at each step</caption>
        <thead>
          <tr>
            <th scope="col">step</th>
            <th scope="col">frame carries</th>
            <th scope="col">worst margin</th>
            <th scope="col">weakest</th>
          </tr>
        </thead>
        <tbody>
          {stages.map((stage) => (
            <StageRow key={stage.name} stage={stage} />
          ))}
        </tbody>
      </table>
      <p>{adviceWords(isEarly, earliest, shares.at(-1)?.byScore ?? null)}</p>
      <Opens className="later-opens" summary="Where the model and its limits come from">
        {() => <EvidenceLines ids={ids} />}
      </Opens>
    </section>
  );
}

function StageRow({ stage }: { readonly stage: Stage }) {
  const worst = stage.loads.toSorted((a, b) => a.margin - b.margin)[0];
  const along = stage.loads.find(({ load }) => load === 'axial-guided');
  if (!worst || !along) return null;
  return (
    <tr>
      <th scope="row">{stage.name}</th>
      <td className="later-figure">{percent(along.frameShare)}</td>
      <td className="later-figure">
        {figure(worst.margin, 2)} <VerdictWord verdict={verdictOf(worst.margin)} />
      </td>
      <td className="quiet">{worst.weakest}</td>
    </tr>
  );
}

/** Of a middle value: milder than the verdict of a plan, which goes by the low end. */
const verdictOf = (margin: number): Verdict => (margin < FAILS ? 'stop' : margin < WATCH ? 'watch' : 'good');

function earliestId({ patientCase }: HealingModel): string {
  return unionWeeksId(patientCase) === 'healing.union.bird' ? 'healing.take-down.bird' : 'healing.take-down.mammal';
}

function adviceWords(
  isEarly: boolean,
  {
    value,
    low,
    high,
    unit,
  }: { readonly value: number; readonly low: number; readonly high: number; readonly unit: string },
  byScore: number | null,
): string {
  const start = `Published practice begins a take-down at ${low === high ? value : `${low} to ${high}`} ${unit}, and only with bridging on film${isEarly ? ': this visit is earlier' : ''}.`;
  if (byScore === null) return `${start} Score the films of this visit, and the model can be read against them.`;
  const limit = percent(entry('healing.load-share.frame-off').value);
  return mayComeOff(byScore)
    ? `${start} By the films the frame carries less than ${limit}, under which frames came off safely in people; the hand on the limb decides with them.`
    : `${start} By the films the frame still carries more than the ${limit} under which frames came off safely in people.`;
}

/** The plan on a phone, for reading: verdict, margins, drawing, films, checks. */
import { filmsBefore } from '@bonewright/casebook';
import { useMemo } from 'react';
import { place } from '../drawing/geometry/placement.ts';
import { VerdictWord } from '../drawing/verdict-mark.tsx';
import { FilmsPanel } from './films/films-panel.tsx';
import { MarginsPanel } from './margins/margins-panel.tsx';
import { Checks } from './margins/sections.tsx';
import type { PlanShown } from './planner.tsx';
import { madeOf } from './ranking/card-facts.ts';
import { Ruler } from './ruler/ruler.tsx';

export function Reading({ state, films, patientCase, construct, assessment, selected, onOpen }: PlanShown) {
  const placement = useMemo(() => place(patientCase, construct), [patientCase, construct]);
  const { plan } = assessment;
  return (
    <div className="plan-reading">
      {plan && (
        <p className="plan-reading-verdict">
          <VerdictWord verdict={plan.verdict} />
          {madeOf(construct, patientCase.drawer, plan.holes, plan.massG).map((line) => (
            <span key={line}>{line}</span>
          ))}
        </p>
      )}
      <MarginsPanel assessment={assessment} samples={patientCase.samples} onOpen={onOpen} />
      <section aria-labelledby="ruler-title">
        <h2 id="ruler-title">The bone along its ruler</h2>
        <Ruler {...{ patientCase, construct, placement, plan, selected }} edit={null} />
      </section>
      <FilmsPanel
        films={filmsBefore(state)}
        pictures={films}
        reduction={state.reduction?.value.move}
        patientCase={patientCase}
        placement={placement}
        selected={selected}
      />
      {plan && <Checks plan={plan} />}
      <p className="quiet">On a phone the plan is for reading; pins are moved on a tablet or a computer.</p>
    </div>
  );
}

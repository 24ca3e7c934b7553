/** What the two films say together: the bone as measured, its walls, and what the surgeon adds before a plan. */
import { type CaseState, type FilmState, outOfDate } from '@bonewright/casebook';
import type { Measured } from '@bonewright/film';
import { VerdictMark } from '../../drawing/verdict-mark.tsx';
import { figure } from '../../plan/words.ts';
import type { Append } from '../../sync/new-event.ts';
import { Description } from '../describe/description.tsx';
import { filmOfView, useJoining } from '../trace/use-joining.ts';
import { FindingsTable } from './findings-table.tsx';
import { ScaleBox } from './scale-box.tsx';
import { useViewsApart, ViewsApart } from './views-apart.tsx';
import { WallsChart } from './walls-chart.tsx';

interface FindingsProps {
  readonly state: CaseState;
  readonly shown: readonly FilmState[];
  readonly isOwn: (seq: number) => boolean;
  readonly append: Append;
  readonly onReduce: () => void;
}

export function Findings({ state, shown, isOwn, append, onReduce }: FindingsProps) {
  const apart = useViewsApart(state.caseId, state.bone?.value.betweenViewsDeg);
  const craniocaudal = filmOfView(shown, 'craniocaudal');
  const mediolateral = filmOfView(shown, 'mediolateral');
  const { failure, start } = useJoining({
    state,
    views: [craniocaudal, mediolateral],
    betweenViewsDeg: apart.betweenViewsDeg,
    isOwn,
    append,
  });
  const isSameView =
    shown.length === 2 && shown[0]?.view.value !== null && shown[0]?.view.value === shown[1]?.view.value;
  const bone = state.bone?.value.bone ?? null;
  const hasEnds = shown.every(({ clicks }) => clicks?.value.boneEnds !== undefined);
  const old = outOfDate(state).find(({ part }) => part === 'bone');
  return (
    <section className="findings" aria-labelledby="findings-title">
      <h2 id="findings-title">What the films say</h2>
      {isSameView && (
        <Callout title={`Both films say ${shown[0]?.view.value}`}>One of them must be the other view.</Callout>
      )}
      {failure && <Callout title="The views could not be joined">{failure}.</Callout>}
      {start && (
        <p className="findings-join">
          <button type="button" className="button button-main" onClick={start}>
            {bone ? 'Join the two views again' : 'Join the two views'}
          </button>
          <span className="caption">
            {bone ? 'A film was marked again since.' : 'Both films are read. Together they give the bone.'}
          </span>
        </p>
      )}
      {bone === null && start === null && failure === null && !isSameView && (
        <p className="quiet">Nothing yet: both films want their steps done. What one film says alone stands on it.</p>
      )}
      {bone && (
        <>
          {old && <p className="quiet">The figures below are older: {old.because}.</p>}
          <FindingsTable bone={bone} hasEnds={hasEnds} />
          {!hasEnds && (
            <p className="caption">
              The bone's ends are not marked on both films. Joints and keep-outs are measured from click 1 and click 4
              until they are.
            </p>
          )}
          {!old && shown.length === 2 && <Reduced state={state} onReduce={onReduce} />}
          <WallsChart bone={bone} />
          <ScaleBox
            films={[craniocaudal, mediolateral].filter((film) => film !== null)}
            lengthMm={bone.lengthMm.value}
          />
          <ViewsApart apart={apart} />
          {bone.warnings.map((warning) => (
            <Callout key={warning} title={warningTitle(warning)}>
              {sentence(warning)}
            </Callout>
          ))}
          <Description state={state} bone={bone} append={append} />
        </>
      )}
    </section>
  );
}

function Reduced({ state, onReduce }: Pick<FindingsProps, 'state' | 'onReduce'>) {
  const bone = state.reduction?.value.bone;
  return (
    <p className="findings-join">
      <button type="button" className="button" onClick={onReduce}>
        Reduce on the screen
      </button>
      <span className="caption">
        {bone
          ? `Kept for the plan: ${leftWords(bone.angulationDeg.true, '° of bend')}, ${leftWords(bone.translationMm, ' mm of shift')}, by ${state.reduction?.by || 'nobody named'}.`
          : 'The plan takes the two parts end to end in one line, until a reduction is kept.'}
      </span>
    </p>
  );
}

const leftWords = ({ value }: Measured, unit: string): string =>
  value === null ? `${unit.replace(/^\W*/, '')} not measured` : `${figure(value)}${unit}`;

function Callout({ title, children }: { readonly title: string; readonly children: React.ReactNode }) {
  return (
    <div className="callout callout-watch">
      <strong>
        <VerdictMark verdict="watch" />
        {title}
      </strong>
      <p>{children}</p>
    </div>
  );
}

const warningTitle = (warning: string): string => {
  if (/long in the/.test(warning)) return 'The two films give two lengths';
  if (/beyond what could be traced/.test(warning)) return 'Part of the bone is not measured';
  return 'To know';
};

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

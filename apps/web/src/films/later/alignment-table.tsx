/** Alignment before and after in numbers, each with its limit, verdict and source. */
import type { CaseState, FilmSet } from '@bonewright/casebook';
import { directionWords } from '@bonewright/construct';
import type { Finding, Measured } from '@bonewright/film';
import { useMemo } from 'react';
import { VerdictWord } from '../../drawing/verdict-mark.tsx';
import { Opens } from '../../plan/margins/opens.tsx';
import { figure } from '../../plan/words.ts';
import { type AlignmentFacts, alignmentBefore, alignmentOf, betweenViews } from './alignment.ts';
import { FindingReasons, findingFigure } from './finding-cell.tsx';

const NAMES: Readonly<Record<string, string>> = {
  frontal: 'Bent, seen craniocaudal',
  sagittal: 'Bent, seen mediolateral',
  rotation: 'Turned about the bone',
  apposition: 'In contact, worse view',
  shortening: 'Shortened',
};

interface AlignmentTableProps {
  readonly state: CaseState;
  readonly set: FilmSet;
}

export function AlignmentTable({ state, set }: AlignmentTableProps) {
  const before = useMemo(() => alignmentBefore(state), [state]);
  const after = useMemo(() => alignmentOf(set, betweenViews(state)), [state, set]);
  if (!after)
    return (
      <p className="quiet">
        Not measured yet: lay the plan over a film, then trace its walls or click the middle of both fragments.
      </p>
    );
  const was = (id: string) => before?.findings.find((finding) => finding.id === id);
  return (
    <>
      <table className="later-table">
        <caption className="sr-only">Alignment before and after</caption>
        <thead>
          <tr>
            <th scope="col">what</th>
            <th scope="col">before</th>
            <th scope="col">after</th>
            <th scope="col">look again</th>
            <th scope="col">verdict</th>
          </tr>
        </thead>
        <tbody>
          {after.findings.map((finding) => (
            <AlignmentRow key={finding.id} before={was(finding.id)} after={finding} />
          ))}
          {after.facts && <FactRows before={before?.facts ?? null} after={after.facts} />}
        </tbody>
      </table>
      {!after.facts && (
        <p className="caption">Measure the other view of that day too: true bend and shift need both.</p>
      )}
      <Opens className="later-opens" summary="Why, limit by limit, and where the limits come from">
        {() => <FindingReasons findings={after.findings} />}
      </Opens>
    </>
  );
}

function AlignmentRow({ before, after }: { readonly before: Finding | undefined; readonly after: Finding }) {
  return (
    <tr>
      <th scope="row">
        {NAMES[after.id] ?? after.id} <span className="unit">{after.unit}</span>
      </th>
      <td className="later-figure">{before ? findingFigure(before) : 'not measured'}</td>
      <td className="later-figure">{findingFigure(after)}</td>
      <td className="quiet">
        {after.id === 'apposition' ? 'below' : 'above'} {figure(after.watch, 0)}
      </td>
      <td>
        {after.verdict === 'unknown' ? (
          <span className="quiet">not judged</span>
        ) : (
          <VerdictWord verdict={after.verdict} />
        )}
      </td>
    </tr>
  );
}

/** What no limit is published for. */
function FactRows({ before, after }: { readonly before: AlignmentFacts | null; readonly after: AlignmentFacts }) {
  const rows: readonly (readonly [name: string, unit: string, pick: (facts: AlignmentFacts) => Measured])[] = [
    ['True bend', 'deg', (facts) => facts.trueBendDeg],
    ['Shifted, both views together', 'mm', (facts) => facts.shiftMm],
    ['Length', 'mm', (facts) => facts.lengthMm],
  ];
  const plane = (facts: AlignmentFacts | null) =>
    facts?.planeFromCraniocaudalDeg.value == null
      ? 'not measured'
      : directionWords(facts.planeFromCraniocaudalDeg.value);
  const words = (m: Measured | undefined) =>
    m?.value == null ? 'not measured' : `${figure(m.value, 1)} ± ${figure(m.sd ?? 0, 1)}`;
  return (
    <>
      {rows.map(([name, unit, pick]) => (
        <tr key={name}>
          <th scope="row">
            {name} <span className="unit">{unit}</span>
          </th>
          <td className="later-figure">{words(before ? pick(before) : undefined)}</td>
          <td className="later-figure">{words(pick(after))}</td>
          <td className="quiet" colSpan={2}>
            no limit published
          </td>
        </tr>
      ))}
      <tr>
        <th scope="row">Bent towards</th>
        <td>{plane(before)}</td>
        <td>{plane(after)}</td>
        <td className="quiet" colSpan={2}>
          no limit published
        </td>
      </tr>
    </>
  );
}

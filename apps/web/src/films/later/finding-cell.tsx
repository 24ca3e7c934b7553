/** One measured departure in a table: signed figure with its give or take, and the mark of its verdict with the word. */
import type { Finding } from '@bonewright/film';
import { VerdictWord } from '../../drawing/verdict-mark.tsx';
import { EvidenceLines } from '../../plan/margins/evidence-lines.tsx';
import { figure } from '../../plan/words.ts';

export const findingFigure = ({ measured, unit }: Finding): string =>
  measured.value === null
    ? 'not measured'
    : `${figure(measured.value, unit === '%' ? 0 : 1)} ± ${figure(measured.sd ?? 0, unit === '%' ? 0 : 1)}`;

export function FindingCell({ finding }: { readonly finding: Finding | undefined }) {
  if (!finding || finding.verdict === 'unknown') return <td className="quiet">not measured</td>;
  return (
    <td className={`later-figure later-${finding.verdict}`}>
      {findingFigure(finding)}
      {finding.verdict !== 'good' && <VerdictWord verdict={finding.verdict} />}
    </td>
  );
}

/** Limits, reasons and where they come from, sentence by sentence. */
export function FindingReasons({ findings }: { readonly findings: readonly Finding[] }) {
  const ids = [...new Set(findings.flatMap(({ evidence }) => evidence))];
  return (
    <>
      <ul className="later-reasons">
        {findings.map(({ id, about, because }) => (
          <li key={`${about} ${id}`}>{because}.</li>
        ))}
      </ul>
      <EvidenceLines ids={ids} />
    </>
  );
}

const ORDER = ['good', 'watch', 'stop'] as const;

/** The worst of the findings that were measured; null where none was. */
export function worstOf(findings: readonly Finding[]): (typeof ORDER)[number] | null {
  const measured = ORDER.filter((verdict) => findings.some((finding) => finding.verdict === verdict));
  return measured.at(-1) ?? null;
}

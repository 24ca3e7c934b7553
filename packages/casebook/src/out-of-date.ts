/** What in a case was made from something that has changed since. Nothing is thrown away: the surgeon decides what to make again. */
import type { CaseState } from './case-state.ts';

export interface OutOfDate {
  readonly part: 'bone' | 'fracture' | 'ranking' | 'construct' | 'sheet';
  readonly because: string;
}

/** One entry for each part that is older than what it was made from. */
export function outOfDate(state: CaseState): OutOfDate[] {
  const found: OutOfDate[] = [];
  const note = (part: OutOfDate['part'], madeAt: number | undefined, sources: readonly [number, string][]) => {
    const newer = sources.filter(([seq]) => madeAt !== undefined && seq > madeAt).map(([, words]) => words);
    if (newer.length > 0) found.push({ part, because: `${newer.join(' and ')} changed since` });
  };
  const { bone, fracture, patient, ranking, construct, drawer } = state;
  const boneSeq = bone?.seq ?? 0;
  note('bone', bone?.seq, [[newestFilmWork(state), 'a film it was measured on']]);
  note('fracture', fracture?.seq, [[boneSeq, 'the bone']]);
  const mechanics: [number, string][] = [
    [patient?.seq ?? 0, 'the patient'],
    [Math.max(boneSeq, state.reduction?.seq ?? 0), 'the bone'],
    [fracture?.seq ?? 0, 'the fracture'],
    [drawer?.seq ?? 0, 'the drawer'],
    [keepOutSeq(state), 'the safe lengths'],
  ];
  note('ranking', ranking?.seq, mechanics);
  note('construct', construct?.seq, mechanics);
  note('sheet', state.sheets.at(-1)?.value.constructSeq, [[construct?.seq ?? 0, 'the construct']]);
  return found;
}

function newestFilmWork({ films, bone }: CaseState): number {
  const used = films.filter((film) => bone?.value.filmIds.includes(film.filmId));
  const signs = used.flatMap((f) => [f.view, f.calibration, f.clicks, f.trace, f.corrections, f.fractureLine]);
  return Math.max(0, ...signs.map((sign) => sign?.seq ?? 0));
}

function keepOutSeq({ keepOut, corridors, softTissueMm }: CaseState): number {
  return Math.max(keepOut?.seq ?? 0, corridors?.seq ?? 0, softTissueMm?.seq ?? 0);
}

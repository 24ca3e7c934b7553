/** Everything in the evidence registry as one list of lines of one shape, found by words. */
import {
  doseFigures,
  drugOf,
  type Entry,
  entries,
  holeCurves,
  lawQuestions,
  outcomeSeries,
  type Source,
  type Status,
} from '@bonewright/evidence';
import { threeFigures } from '../plan/words.ts';
import { KNOWN, sourceWords, unitWords } from './entry-words.ts';

export const SUBJECTS = ['Figures', 'Curves', 'Doses', 'Outcomes', 'Questions of law'] as const;
type Subject = (typeof SUBJECTS)[number];

export interface NumberLine {
  readonly id: string;
  readonly subject: Subject;
  readonly name: string;
  /** Empty for a line that is no single figure. */
  readonly figure: string;
  readonly range: string;
  /** Sentences: whom it applies to, and what else to bear in mind. */
  readonly says: readonly string[];
  readonly source: Source;
  readonly status: Status;
  readonly conflicts: { readonly ids: readonly string[]; readonly why: string } | null;
}

const SPREAD: Readonly<Record<Entry['spread'], string>> = {
  '95 %': '95 in 100 lie between',
  range: 'range',
  sd: 'one standard deviation either way',
  exact: '',
};

const ofEntry = (e: Entry): NumberLine => ({
  id: e.id,
  subject: 'Figures',
  name: e.name,
  figure: `${threeFigures(e.value)}${unitWords(e.unit)}`,
  range: e.low < e.high ? `${threeFigures(e.low)} to ${threeFigures(e.high)} (${SPREAD[e.spread]})` : '',
  says: [`For ${e.appliesTo}`, ...(e.note ? [e.note] : [])],
  source: e.source,
  status: e.status,
  conflicts: e.conflicts ?? null,
});

const figuresOf: readonly NumberLine[] = entries.map(ofEntry);

const curvesOf: readonly NumberLine[] = holeCurves.map((c) => ({
  id: c.id,
  subject: 'Curves',
  name: c.name,
  figure: `${c.terms.length} terms`,
  range: '',
  says: [`For ${c.appliesTo}`],
  source: c.source,
  status: c.status,
  conflicts: null,
}));

const dosesOf: readonly NumberLine[] = doseFigures.map((d) => ({
  id: d.id,
  subject: 'Doses',
  name: `${d.drug}, ${d.use}`,
  figure: `${d.low === d.high ? d.low : `${d.low} to ${d.high}`} ${drugOf(d.drug)?.unit ?? 'mg'}/kg`,
  range: d.routes.join(', '),
  says: [
    `Studied in ${d.studied}${d.n === undefined ? '' : `, ${d.n} animals`}`,
    ...(d.standing === 'current' ? [] : [`Standing: ${d.standing}`]),
    ...(d.together ? [`Given together with ${d.together}`] : []),
    ...(d.note ? [d.note] : []),
  ],
  source: d.source,
  status: d.status,
  conflicts: d.conflicts ?? null,
}));

const outcomesOf: readonly NumberLine[] = outcomeSeries.map((o) => ({
  id: o.id,
  subject: 'Outcomes',
  name: `${o.animals}: ${o.treatment}`,
  figure: o.n === null ? '' : `${o.n} animals`,
  range: '',
  says: [...o.outcomes, ...(o.note ? [o.note] : [])],
  source: o.source,
  status: o.status,
  conflicts: null,
}));

const questionsOf: readonly NumberLine[] = lawQuestions.map((q) => ({
  id: q.id,
  subject: 'Questions of law',
  name: q.question,
  figure: '',
  range: q.country,
  says: [`Ask ${q.ask}`],
  source: q.source,
  status: q.status,
  conflicts: null,
}));

/** Every line, in the order of the registry. */
export const numberLines: readonly NumberLine[] = [
  ...figuresOf,
  ...curvesOf,
  ...dosesOf,
  ...outcomesOf,
  ...questionsOf,
];

const nameById = new Map(numberLines.map(({ id, name, figure }) => [id, `${name} ${figure}`.trim()]));

/** Name and figure of that line; its id where there is none. */
export const nameOfNumber = (id: string): string => nameById.get(id) ?? id;

const textOf = (line: NumberLine): string =>
  [
    line.id,
    line.subject,
    line.name,
    line.figure,
    line.range,
    ...line.says,
    sourceWords(line.source),
    KNOWN[line.status],
  ]
    .join(' ')
    .toLowerCase();
const texts = numberLines.map((line) => ({ line, text: textOf(line) }));

/** Lines in which every word of the question stands; all of them for an empty one. */
export function findNumbers(question: string): readonly NumberLine[] {
  const words = question.toLowerCase().split(/\s+/).filter(Boolean);
  return texts.filter(({ text }) => words.every((word) => text.includes(word))).map(({ line }) => line);
}

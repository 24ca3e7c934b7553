/** What is said of files while they come in: a line each, and how many are done. */
export interface Line {
  readonly key: string;
  readonly name: string;
  readonly state: 'waiting' | 'reading' | 'in' | 'refused';
  /** Why it was refused. */
  readonly why: string | null;
}

export interface Arrivals {
  readonly lines: readonly Line[];
  /** Files out of folders and ZIPs that are no films. */
  readonly noFilms: readonly string[];
}

export const NO_ARRIVALS: Arrivals = { lines: [], noFilms: [] };

export type Step =
  | { readonly kind: 'came'; readonly files: readonly { readonly key: string; readonly name: string }[] }
  | { readonly kind: 'reading'; readonly key: string }
  | { readonly kind: 'ended'; readonly key: string; readonly ended: 'in' | 'no-film' | { readonly why: string } };

export const isBusy = ({ lines }: Arrivals): boolean =>
  lines.some(({ state }) => state === 'waiting' || state === 'reading');

/** After a step. When all are done, those that came in need no line any more. */
export function after(now: Arrivals, step: Step): Arrivals {
  const next = stepped(now, step);
  if (step.kind !== 'ended' || isBusy(next)) return next;
  return { ...next, lines: next.lines.filter(({ state }) => state === 'refused') };
}

function stepped({ lines, noFilms }: Arrivals, step: Step): Arrivals {
  const change = (key: string, part: Partial<Line>) =>
    lines.map((line) => (line.key === key ? { ...line, ...part } : line));
  switch (step.kind) {
    case 'came': {
      const came = step.files.map(({ key, name }): Line => ({ key, name, state: 'waiting', why: null }));
      return { lines: [...lines, ...came], noFilms };
    }
    case 'reading':
      return { lines: change(step.key, { state: 'reading' }), noFilms };
    case 'ended': {
      const { key, ended } = step;
      if (ended === 'in') return { lines: change(key, { state: 'in' }), noFilms };
      if (ended !== 'no-film') return { lines: change(key, { state: 'refused', why: ended.why }), noFilms };
      const name = lines.find((line) => line.key === key)?.name ?? '';
      return { lines: lines.filter((line) => line.key !== key), noFilms: [...noFilms, name] };
    }
  }
}

export const withoutLine = ({ lines, noFilms }: Arrivals, key: string): Arrivals => ({
  lines: lines.filter((line) => line.key !== key),
  noFilms,
});

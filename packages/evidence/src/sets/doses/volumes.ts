/** Good-practice volumes after Diehl and others (2001). Copies disagree, and the IM column changes its unit: a unit a cell. */
import type { DoseRoute } from '../../dose-figure.ts';
import type { Source } from '../../entry.ts';
import type { VolumeLimit } from '../../injection.ts';

const DIEHL: Source = {
  title: 'Diehl et al., good practice guide to the administration of substances, university copies',
  year: 2001,
  place: 'J Appl Toxicol 21:15',
};
type Cell = readonly [recommended: number | null, maximum: number | null];
type Row = readonly [species: string, oral: Cell, sc: Cell, ip: Cell, im: Cell, iv: Cell];

const ROUTES: readonly DoseRoute[] = ['PO', 'SC', 'IP', 'IM', 'IV'];
const PER_SITE = new Set(['mouse', 'rat']);
const ROWS: readonly Row[] = [
  ['mouse', [10, 50], [10, 40], [20, 80], [0.05, 0.1], [5, 25]],
  ['rat', [10, 40], [5, 10], [10, 20], [0.1, 0.2], [5, 20]],
  ['rabbit', [10, 15], [1, 2], [5, 20], [0.25, 0.5], [2, 10]],
  ['dog', [5, 15], [1, 2], [1, 20], [0.25, 0.5], [2.5, 5]],
  ['minipig', [10, 15], [1, 2], [1, 20], [0.25, 0.5], [2.5, 5]],
  ['macaque', [5, 15], [2, 5], [null, 10], [0.25, 0.5], [2, null]],
  ['marmoset', [10, 15], [2, 5], [null, 20], [0.25, 0.5], [2.5, 10]],
];

const noteOf = (species: string, route: DoseRoute): string | null => {
  if (species === 'mouse' && route === 'IV') return 'a bolus; 5 on one copy of the table and 2 on another';
  return route === 'IV' ? 'a bolus; the second figure when given slowly' : null;
};

export const volumeLimits: readonly VolumeLimit[] = Object.freeze(
  ROWS.flatMap(([species, ...cells]) =>
    cells.map(([recommended, maximum], i): VolumeLimit => {
      const route = ROUTES[i]!;
      const note = noteOf(species, route);
      return {
        species,
        route,
        recommended,
        maximum,
        unit: route === 'IM' && PER_SITE.has(species) ? 'ml per site' : 'ml/kg',
        source: DIEHL,
        status: 'seen',
        ...(note === null ? {} : { note }),
      };
    }),
  ),
);

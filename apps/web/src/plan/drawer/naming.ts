/** Rows of the drawer are named by what they are: a row that was changed or added gets its name when the drawer is kept. */
import type { Drawer, DrawerColumn, DrawerImPin, DrawerPin } from '@bonewright/construct';

type PinSize = Pick<DrawerPin, 'kind' | 'gauge' | 'diameterMm' | 'coreDiameterMm'>;

const STEMS = { smooth: 'wire', 'threaded-end': 'threaded', 'threaded-centre': 'threaded', needle: 'needle' } as const;

type Row = DrawerPin | DrawerImPin | DrawerColumn;

/** The drawer as it is kept; rows that stayed as they were in `before` keep their names, so that plans still find them. */
export function withNames(draft: Drawer, before: Drawer): Drawer {
  const taken = new Set<string>();
  const named = <R extends Row>(rows: readonly R[], old: readonly R[], nameOf: (row: R) => string): R[] =>
    rows.map((row) => {
      const same = old.some((each) => each.id === row.id && nameOf(each) === nameOf(row));
      const id = unique(same ? row.id : nameOf(row), taken);
      taken.add(id);
      return { ...row, id };
    });
  return {
    ...draft,
    pins: named(draft.pins, before.pins, pinName),
    imPins: named(draft.imPins, before.imPins, imName),
    columns: named(draft.columns, before.columns, columnName),
  };
}

export const imName = ({ diameterMm }: Pick<DrawerImPin, 'diameterMm'>): string => `IM ${size(diameterMm)}`;

export const columnName = ({ material, diameterMm }: Pick<DrawerColumn, 'material' | 'diameterMm'>): string =>
  `${material === 'epoxy-putty' ? 'putty' : material} ${diameterMm}`;

export function pinName({ kind, gauge, diameterMm, coreDiameterMm }: PinSize): string {
  if (kind === 'needle' && gauge !== undefined) return `needle ${gauge} G`;
  const core = kind === 'smooth' || coreDiameterMm === undefined ? '' : ` core ${size(coreDiameterMm)}`;
  return `${STEMS[kind]} ${size(diameterMm)}${core}`;
}

const size = (mm: number): string => mm.toFixed(2).replace(/0$/, '');

export function unique(name: string, taken: ReadonlySet<string>): string {
  let n = 2;
  let id = name;
  while (taken.has(id)) {
    id = `${name} (${n})`;
    n += 1;
  }
  return id;
}

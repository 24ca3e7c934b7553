/** The rods of a plan's figure in one view, named as on the sheet: P1, P2, ... and IM. */
import type { PlannedRod } from './pins-against-plan.ts';
import type { PlanPoint } from './place-plan.ts';

/** What is read of a figure; the construct package's `ViewFigure` is one. */
export interface RodFigure {
  /** Each from its tip to its near end. */
  readonly pins: readonly {
    readonly line: readonly PlanPoint[];
    readonly diameterMm: number;
    readonly nearWall: PlanPoint;
  }[];
  /** From its near end to its tip. */
  readonly im: { readonly line: readonly PlanPoint[]; readonly diameterMm: number } | null;
}

/** `fractureMm`: where along the bone the IM pin's place is compared. */
export function plannedRods(figure: RodFigure, fractureMm: number): PlannedRod[] {
  const pins = figure.pins.map(
    ({ line, diameterMm, nearWall }, i): PlannedRod => ({
      name: `P${i + 1}`,
      kind: 'pin',
      near: line.at(-1)!,
      tip: line[0]!,
      entry: nearWall,
      diameterMm,
    }),
  );
  if (!figure.im) return pins;
  const { line, diameterMm } = figure.im;
  const [near, tip] = [line[0]!, line.at(-1)!];
  const share = (fractureMm - near[0]) / (tip[0] - near[0]);
  const entry: PlanPoint = [fractureMm, near[1] + share * (tip[1] - near[1])];
  return [...pins, { name: 'IM', kind: 'im', near, tip, entry, diameterMm }];
}

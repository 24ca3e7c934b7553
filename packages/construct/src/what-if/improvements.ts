/** The changes that would help most: each tried at middle values, the best few assessed with their spread. */
import { value } from '@bonewright/evidence';
import { inMm, pinWords } from '../checks/words.ts';
import type { Case, Construct } from '../model/case-file.ts';
import { columnsOf, found } from '../model/figures.ts';
import { LOADS, type Plan } from '../model/plan.ts';
import type { Evaluators } from '../search/evaluators.ts';
import { watchesIn, worstMargin } from '../search/worth.ts';
import { nextLarger } from './drawer-steps.ts';
import { withAllPins, withColumns, withPinAdded, withPinAt, withPinSize } from './edits.ts';
import { measuredAgain } from './measured-again.ts';

export interface Improvement {
  /** `Column 1 mm nearer to the skin`. */
  readonly words: string;
  /** The worst margin then: 5 of 100 trials fall below it. */
  readonly worstP05: number;
  /** What to apply; null where the change is a measurement. */
  readonly construct: Construct | null;
}

interface Change {
  readonly words: string;
  readonly construct: Construct;
}

/** Offered at most. */
const MOST = 3;
/** Assessed in full: middle values may order near ties otherwise. */
const TRIED_IN_FULL = 5;

/** Up to three changes of the construct or measurements that raise the worst margin, most first. */
export function improvementsWith(evaluators: Evaluators, patientCase: Case, construct: Construct): Improvement[] {
  const { samples, seed } = patientCase;
  const now = evaluators.full(patientCase, construct, { samples, seed });
  const least = worstMargin(now) * (1 + value('what-if.least-gain') / 100);
  const before = evaluators.nominal(patientCase, construct);
  const promising = changesOf(patientCase, construct)
    .map((change) => ({ ...change, plan: evaluators.nominal(patientCase, change.construct) }))
    .filter(({ plan }) => isAllowed(plan, before))
    .toSorted((a, b) => carried(b.plan, now) - carried(a.plan, now))
    .slice(0, TRIED_IN_FULL);
  const built = promising.map(({ words, construct: changed }): Improvement => {
    const worstP05 = worstMargin(evaluators.full(patientCase, changed, { samples, seed }));
    return { words, worstP05, construct: changed };
  });
  return [...built, ...measuredAgain(now)]
    .filter(({ worstP05 }) => worstP05 >= least)
    .toSorted((a, b) => b.worstP05 - a.worstP05)
    .slice(0, MOST);
}

/** No check stops it, and none that was good turns to watch: a gain in one place is not bought with worry in another. */
function isAllowed(plan: Plan, before: Plan): boolean {
  return (
    plan.checks.every(({ verdict }) => verdict !== 'stop') &&
    watchesIn(plan.checks).size <= watchesIn(before.checks).size
  );
}

/** The worst margin of a plan at middle values, with the spread that the full assessment of another one showed. */
function carried(middle: Plan, full: Plan): number {
  return Math.min(
    ...LOADS.map((load) => {
      const { p05, p50 } = full.loads[load].margin;
      return middle.loads[load].margin.p50 * (p50 > 0 ? p05 / p50 : 1);
    }),
  );
}

function changesOf(patientCase: Case, construct: Construct): Change[] {
  return [
    ...columnChanges(patientCase, construct),
    ...sizeChanges(patientCase, construct),
    ...placeChanges(patientCase, construct),
    ...addedPins(patientCase, construct),
    ...imChanges(patientCase, construct),
  ];
}

function columnChanges({ drawer }: Case, construct: Construct): Change[] {
  const step = value('what-if.column-step');
  const nearer = withColumns(construct, (c) => ({ ...c, clearanceMm: Math.max(0, c.clearanceMm - step) }));
  const columns = columnsOf(construct).map(({ drawerId }) => found(drawer.columns, drawerId));
  const larger = nextLarger(drawer.columns, columns[0]!);
  const isNear = columnsOf(construct).every(({ clearanceMm }) => clearanceMm >= step);
  return [
    ...(isNear ? [{ words: `Column ${step} mm nearer to the skin`, construct: nearer }] : []),
    ...(larger
      ? [
          {
            words: `Column of ${larger.diameterMm} mm`,
            construct: withColumns(construct, (c) => ({ ...c, drawerId: larger.id })),
          },
        ]
      : []),
  ];
}

function sizeChanges({ drawer }: Case, construct: Construct): Change[] {
  const pins = construct.pins.map(({ drawerId }) => found(drawer.pins, drawerId));
  const thinnest = pins.reduce((a, b) => (b.diameterMm < a.diameterMm ? b : a));
  const larger = nextLarger(drawer.pins, thinnest);
  const single = pins.flatMap((pin, i) => {
    const next = nextLarger(drawer.pins, pin);
    return next ? [{ words: `${pinWords(next)} for P${i + 1}`, construct: withPinSize(construct, i, next.id) }] : [];
  });
  return [
    ...(larger ? [{ words: `${pinWords(larger)} for all pins`, construct: withAllPins(construct, larger.id) }] : []),
    ...single,
  ];
}

function placeChanges({ fracture, bone }: Case, construct: Construct): Change[] {
  const step = value('what-if.pin-step');
  const middle = (fracture.fromMm + fracture.toMm) / 2;
  return construct.pins.flatMap(({ sMm }, i) => {
    const towards = sMm < middle ? step : -step;
    const move = (by: number, words: string) => {
      const to = sMm + by;
      const isInside = to > 0 && to < bone.lengthMm;
      return isInside ? [{ words: `P${i + 1} ${inMm(step)} ${words}`, construct: withPinAt(construct, i, to) }] : [];
    };
    return [...move(towards, 'nearer to the fracture'), ...move(-towards, 'further from the fracture')];
  });
}

/** In the middle of the widest stretch between two pins of a fragment. */
function addedPins({ fracture }: Case, construct: Construct): Change[] {
  const places = construct.pins.map(({ sMm }) => sMm).toSorted((a, b) => a - b);
  const sides = [
    { name: 'proximal', inside: places.filter((s) => s < fracture.fromMm) },
    { name: 'distal', inside: places.filter((s) => s > fracture.toMm) },
  ];
  return sides.flatMap(({ name, inside }) => {
    const gaps = inside.slice(1).map((s, i) => [inside[i]!, s] as const);
    const widest = gaps.toSorted((a, b) => b[1] - b[0] - (a[1] - a[0]))[0];
    if (!widest) return [];
    const sMm = Math.round(widest[0] + widest[1]) / 2;
    return [
      { words: `One more pin in the ${name} fragment, at ${inMm(sMm)}`, construct: withPinAdded(construct, sMm) },
    ];
  });
}

function imChanges({ drawer }: Case, construct: Construct): Change[] {
  const { im } = construct;
  if (im && !im.tiedIn) return [{ words: 'IM pin tied in', construct: { ...construct, im: { ...im, tiedIn: true } } }];
  const inStock = drawer.imPins.filter(({ count }) => count > 0);
  const added = (id: string, words: string) => ({
    words,
    construct: { ...construct, im: { drawerId: id, tiedIn: true } },
  });
  if (!im) return inStock.map(({ id, diameterMm }) => added(id, `IM pin of ${diameterMm} mm, tied in`));
  const larger = nextLarger(inStock, found(drawer.imPins, im.drawerId));
  return larger ? [added(larger.id, `IM pin of ${larger.diameterMm} mm`)] : [];
}

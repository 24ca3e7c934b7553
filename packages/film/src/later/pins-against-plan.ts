/** Pins found on a film against the plan laid over it: place, tilt and depth, with sds and limits. */
import type { Measured } from '../model/trace.ts';
import { type Finding, finding } from './finding.ts';
import { onFilm, onPlan, type Placing, type PlanPoint, placeSdMm } from './place-plan.ts';
import { type ExpectedRod, type FoundRod, isFound, type NoRod } from './rod.ts';

/** A rod as planned, in the plan's figure of this view. */
export interface PlannedRod {
  readonly name: string;
  readonly kind: 'pin' | 'im';
  readonly near: PlanPoint;
  readonly tip: PlanPoint;
  /** Where its place is compared: where a pin meets the near wall, where an IM pin passes the fracture. */
  readonly entry: PlanPoint;
  readonly diameterMm: number;
}

export interface PinAgainstPlan {
  readonly name: string;
  readonly kind: PlannedRod['kind'];
  /** Pin: along the bone, positive distally. IM pin: across it, positive medially or cranially. */
  readonly placeMm: Measured;
  /** Pin: tip leaning distally is positive. IM pin: tip leaning medially or cranially. */
  readonly tiltDeg: Measured;
  /** Positive: tip deeper than planned. A ground tip fades out: its last fraction of a diameter is not seen. */
  readonly depthMm: Measured;
  readonly diameterMm: Measured;
  readonly findings: readonly Finding[];
}

/** Where the plan's rods are to be looked for on the film. */
export function expectedRods(placing: Placing, planned: readonly PlannedRod[]): ExpectedRod[] {
  return planned.map(({ name, near, tip, diameterMm }) => ({
    name,
    near: onFilm(placing, near),
    tip: onFilm(placing, tip),
    widthPx: diameterMm * placing.pxPerMm.value!,
  }));
}

/** Each planned rod against what was found under its name; one that was not found carries the reason. */
export function pinsAgainstPlan(
  placing: Placing,
  planned: readonly PlannedRod[],
  found: readonly (FoundRod | NoRod)[],
): PinAgainstPlan[] {
  return planned.map((plan) => {
    const rod = found.find((f) => f.name === plan.name) ?? { name: plan.name, why: 'it was not looked for' };
    const measured = isFound(rod) ? compared(placing, plan, rod) : missing(rod.why);
    return { name: plan.name, kind: plan.kind, ...measured, findings: findingsOf(plan, measured) };
  });
}

type Compared = Pick<PinAgainstPlan, 'placeMm' | 'tiltDeg' | 'depthMm' | 'diameterMm'>;

function missing(why: string): Compared {
  const none: Measured = { value: null, sd: null, why };
  return { placeMm: none, tiltDeg: none, depthMm: none, diameterMm: none };
}

function compared(placing: Placing, plan: PlannedRod, rod: FoundRod): Compared {
  const mm = 1 / placing.pxPerMm.value!;
  const [a, b] = [onPlan(placing, rod.line[0]), onPlan(placing, rod.line[1])];
  const middle: PlanPoint = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const direction = unit(a, b);
  // along: the coordinate in which the place is given; through: the one at which it is read
  const [along, through] = plan.kind === 'pin' ? ([0, 1] as const) : ([1, 0] as const);
  const reach = (plan.entry[through] - middle[through]) / direction[through];
  const directionSd = (rod.directionSdDeg * Math.PI) / 180;
  const lineSd = Math.hypot(rod.acrossSdPx * mm, reach * directionSd, placeSdMm(placing, plan.entry));
  const wanted = unit(plan.near, plan.tip);
  const lean = (u: PlanPoint) => Math.atan2(u[along], Math.abs(u[through]));
  const at = middle[along] + reach * direction[along];
  const entered: PlanPoint = plan.kind === 'pin' ? [at, plan.entry[1]] : [plan.entry[0], at];
  return {
    placeMm: {
      value: at - plan.entry[along],
      sd: lineSd / Math.abs(direction[through]),
    },
    tiltDeg: {
      value: ((lean(direction) - lean(wanted)) * 180) / Math.PI,
      sd: Math.hypot(rod.directionSdDeg, placing.turnDeg.sd!),
    },
    depthMm: depthOf(placing, plan, rod, entered),
    diameterMm: diameterOf(placing, rod),
  };
}

function diameterOf({ pxPerMm }: Placing, { widthPx, widthSdPx }: FoundRod): Measured {
  if (widthPx === null || widthSdPx === null)
    return { value: null, sd: null, why: 'the rod is too thin on this film for its diameter to be read' };
  const mm = widthPx / pxPerMm.value!;
  return { value: mm, sd: Math.hypot(widthSdPx / pxPerMm.value!, mm * (pxPerMm.sd! / pxPerMm.value!)) };
}

/** From where the rod itself is entered to its tip, less the same of the plan. */
function depthOf(placing: Placing, plan: PlannedRod, rod: FoundRod, entered: PlanPoint): Measured {
  if (!rod.tip.place) return { value: null, sd: null, why: `the tip is not seen: ${rod.tip.why ?? ''}` };
  const tip = onPlan(placing, rod.tip.place);
  const distance = (p: PlanPoint, q: PlanPoint) => Math.hypot(q[0] - p[0], q[1] - p[1]);
  return {
    value: distance(entered, tip) - distance(plan.entry, plan.tip),
    sd: Math.hypot(rod.tip.sdPx! / placing.pxPerMm.value!, placeSdMm(placing, plan.tip)),
  };
}

function unit(from: PlanPoint, to: PlanPoint): PlanPoint {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}

function findingsOf({ name, kind, diameterMm }: PlannedRod, m: Compared): Finding[] {
  const isPast = (v: Measured) => (v.value ?? 0) > 0;
  const [there, back] = kind === 'pin' ? ['distal', 'proximal'] : ['medial or cranial', 'lateral or caudal'];
  const about = name;
  return [
    finding({
      id: 'pin-place',
      about,
      measured: m.placeMm,
      unit: 'mm',
      limits: 'alignment.pin.place',
      times: diameterMm,
      words: `${isPast(m.placeMm) ? there : back} of its planned place`,
    }),
    finding({
      id: 'pin-tilt',
      about,
      measured: m.tiltDeg,
      unit: 'deg',
      limits: 'alignment.pin.tilt',
      words: `from its planned tilt, tip further ${isPast(m.tiltDeg) ? there : back}`,
    }),
    finding({
      id: 'pin-depth',
      about,
      measured: m.depthMm,
      unit: 'mm',
      limits: 'alignment.pin.depth',
      times: diameterMm,
      words: isPast(m.depthMm) ? 'deeper than planned' : 'short of its planned depth',
    }),
  ];
}

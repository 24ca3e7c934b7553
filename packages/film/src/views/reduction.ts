/**
 * How far from reduced a bone is, in numbers, and the same numbers after the distal fragment has been moved.
 * Pairs are [craniocaudal, mediolateral]: what is seen in that view, positive medially and cranially.
 */
import { InputError } from '@bonewright/fault';
import type { Measured, Pixel, TracedSegment, TracedView } from '../model/trace.ts';
import { coordinatesOf, type LineFrame, lineFrame } from '../trace/frame.ts';
import { apposition } from './apposition.ts';
import { joinViews } from './join-views.ts';
import { type RotationFromWidths, rotationFromWidths, widthAtFracture } from './rotation.ts';
import { overrideMm } from './shortening.ts';
import { columnward, crossing } from './traced-fragment.ts';
import { trueAngle } from './true-angle.ts';

type Pair<T> = readonly [craniocaudal: T, mediolateral: T];

/** Middle of the broken face of the proximal and of the distal fragment, one view. */
export type BrokenEnds = readonly [Pixel, Pixel];

/** What may be marked besides the trace, each view its own; absent: the facts that need it are null. */
export interface ReductionMarks {
  readonly craniocaudal?: BrokenEnds | undefined;
  readonly mediolateral?: BrokenEnds | undefined;
}

/** The numbers of a reduction. All are facts of the distal fragment against the proximal one. */
export interface ReductionFacts {
  readonly lengthMm: Measured;
  readonly widthMm: Pair<number>;
  readonly betweenViewsDeg: number;
  readonly angulationDeg: Pair<Measured>;
  readonly trueAngulationDeg: Measured;
  readonly planeFromCraniocaudalDeg: Measured;
  /** Across the proximal axis at the fracture. */
  readonly offsetMm: Pair<Measured>;
  readonly trueOffsetMm: Measured;
  /** How far the fragments override along the bone; below 0 a gap. */
  readonly shorteningMm: Measured;
  /** Share of the bone's width that faces the other fragment, 0 to 1, and of its whole section. */
  readonly appositionShare: Pair<Measured>;
  readonly appositionOfSection: Measured;
  readonly rotationDeg: RotationFromWidths;
  readonly warnings: readonly string[];
}

/** A move of the distal fragment; all absent parts are 0. The bend turns it about the fracture. */
export interface ReductionMove {
  /** Towards medial and cranial. */
  readonly translationMm?: Pair<number>;
  /** Added to the angles seen in the two views. */
  readonly angulationDeg?: Pair<number>;
  /** Drawn out along the bone. */
  readonly lengthMm?: number;
  /** Turned back about the bone. */
  readonly rotationDeg?: number;
}

/**
 * The facts of a bone in two traced views, `betweenViewsDeg` apart. Throws InputError as `joinViews` does.
 * Shortening needs both broken ends marked in a view; a turn needs sections that are not round.
 */
export function reductionFacts(
  craniocaudal: TracedView,
  mediolateral: TracedView,
  betweenViewsDeg: number,
  marks: ReductionMarks = {},
): ReductionFacts {
  const joined = joinViews(craniocaudal, mediolateral, betweenViewsDeg);
  const views = [craniocaudal, mediolateral] as const;
  const widths = views.map((v) => v.trace.segments.map((s) => widthAtFracture(s, v))) as unknown as Pair<
    readonly [Measured, Measured]
  >;
  const nearest = joined.stations.reduce((a, b) =>
    Math.abs(b.sMm - middle(joined.fracture)) < Math.abs(a.sMm - middle(joined.fracture)) ? b : a,
  );
  const warnings = [...joined.warnings];
  const shorteningMm = overrideMm(views, [marks.craniocaudal, marks.mediolateral]);
  if ((shorteningMm.value ?? 0) > 2 * (shorteningMm.sd ?? 0)) {
    warnings.push('the fragments override: what is called apposition is of their shadows, their ends do not touch');
  }
  return settled({
    lengthMm: joined.lengthMm,
    widthMm: nearest.outerMm,
    betweenViewsDeg,
    angulationDeg: [joined.angulationDeg.craniocaudal, joined.angulationDeg.mediolateral],
    trueAngulationDeg: joined.angulationDeg.true,
    planeFromCraniocaudalDeg: joined.planeFromCraniocaudalDeg,
    offsetMm: [offsetOf(craniocaudal, 'medial'), offsetOf(mediolateral, 'cranial')],
    shorteningMm,
    rotationDeg: rotationFromWidths(widths, betweenViewsDeg),
    warnings,
  });
}

/**
 * The facts after the distal fragment has been moved. What was null stays null, sds stay: a move on the screen
 * says nothing new of the animal. Moves add up, so that a kept reduction can be moved on.
 */
export function reducedBy(facts: ReductionFacts, move: ReductionMove): ReductionFacts {
  const { translationMm = [0, 0], angulationDeg = [0, 0], lengthMm = 0, rotationDeg = 0 } = move;
  for (const [key, v] of Object.entries({ translationMm, angulationDeg, lengthMm, rotationDeg })) {
    if (![v].flat().every(Number.isFinite))
      throw new InputError('a move is not a number', key, 'give millimetres or degrees');
  }
  const angles = facts.angulationDeg.map((m, i) => plus(m, angulationDeg[i]!)) as unknown as Pair<Measured>;
  const [a, b] = [angles[0].value, angles[1].value];
  const bend = a === null || b === null ? null : trueAngle([a, b], facts.betweenViewsDeg);
  return settled({
    ...facts,
    angulationDeg: angles,
    trueAngulationDeg: bend ? { ...facts.trueAngulationDeg, value: bend.trueAngulationDeg } : facts.trueAngulationDeg,
    planeFromCraniocaudalDeg: bend
      ? { ...facts.planeFromCraniocaudalDeg, value: bend.planeFromFirstViewDeg }
      : facts.planeFromCraniocaudalDeg,
    offsetMm: facts.offsetMm.map((m, i) => plus(m, translationMm[i]!)) as unknown as Pair<Measured>,
    shorteningMm: plus(facts.shorteningMm, -lengthMm),
    rotationDeg: { ...facts.rotationDeg, ...plus(facts.rotationDeg, -rotationDeg) },
  });
}

/** The move that brings every number that is known to 0: the fragments end to end in one line. */
export function fullReduction(facts: ReductionFacts): Required<ReductionMove> {
  const back = (m: Measured) => (m.value === null ? 0 : 0 - m.value);
  return {
    translationMm: [back(facts.offsetMm[0]), back(facts.offsetMm[1])],
    angulationDeg: [back(facts.angulationDeg[0]), back(facts.angulationDeg[1])],
    lengthMm: facts.shorteningMm.value ?? 0,
    rotationDeg: facts.rotationDeg.value ?? 0,
  };
}

/** With what follows from offset and widths. */
function settled(
  facts: Omit<ReductionFacts, 'trueOffsetMm' | 'appositionShare' | 'appositionOfSection'>,
): ReductionFacts {
  const { offsetMm, widthMm, betweenViewsDeg } = facts;
  return { ...facts, ...apposition(offsetMm, widthMm, betweenViewsDeg) };
}

const middle = ({ fromMm, toMm }: { fromMm: number; toMm: number }): number => (fromMm + toMm) / 2;
const plus = (m: Measured, by: number): Measured => (m.value === null ? m : { ...m, value: m.value + by });

/** Distal axis against the proximal one where the fracture line crosses the proximal axis. */
function offsetOf(view: TracedView, positive: 'medial' | 'cranial'): Measured {
  const { translationMm, mmPerPixel, segments } = view.trace;
  if (translationMm.value === null) return translationMm;
  const [a, b] = segments.map(frameOf) as [LineFrame, LineFrame];
  const level = crossing(a, view.fractureLine);
  const [s0, x0] = coordinatesOf(a, b.from);
  const [s1, x1] = coordinatesOf(a, b.to);
  const px = x0 + ((level - s0) * (x1 - x0)) / (s1 - s0);
  const sign = columnward(a) * (view.columnTowards === positive ? 1 : -1);
  // the same two axes as the trace's translation, read a little further along
  return { value: sign * px * mmPerPixel.value!, sd: translationMm.sd };
}

const frameOf = (s: TracedSegment): LineFrame => lineFrame(s.axis.from, s.axis.to);

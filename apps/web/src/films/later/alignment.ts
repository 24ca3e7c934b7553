/** The bone's alignment on films of before and of later, from traced walls or from four clicks, from one view or both. */
import { type CaseState, type FilmSet, type FilmState, filmsBefore } from '@bonewright/casebook';
import { InputError } from '@bonewright/fault';
import {
  alignmentFindings,
  axisByClicks,
  bendFinding,
  type Finding,
  isPlaced,
  type Measured,
  placePlan,
  reductionFacts,
  trueAngle,
} from '@bonewright/film';
import { filmOfView, tracedView } from '../trace/use-joining.ts';

/** Numbers that no limit is published for; both views are needed. */
export interface AlignmentFacts {
  readonly trueBendDeg: Measured;
  readonly planeFromCraniocaudalDeg: Measured;
  readonly shiftMm: Measured;
  readonly lengthMm: Measured;
}

export interface Alignment {
  readonly findings: readonly Finding[];
  /** Null where one view alone says something. */
  readonly facts: AlignmentFacts | null;
}

type Views = Pick<FilmSet, 'craniocaudal' | 'mediolateral'>;

/** Null where nothing was measured. */
export function alignmentOf(views: Views, betweenViewsDeg: number): Alignment | null {
  return byWalls(views, betweenViewsDeg) ?? byAxes(views, betweenViewsDeg);
}

/** Whether a trace read the walls anywhere. */
export const hasWalls = ({ trace }: FilmState): boolean =>
  trace?.value.segments.every(({ stations }) => stations.some(({ outerMm }) => outerMm.value !== null)) ?? false;

function byWalls({ craniocaudal, mediolateral }: Views, betweenViewsDeg: number): Alignment | null {
  const [a, b] = [craniocaudal, mediolateral].map((film) => (film && hasWalls(film) ? tracedView(film) : null));
  if (!a || !b) return null;
  try {
    const facts = reductionFacts(a, b, betweenViewsDeg);
    const { trueAngulationDeg, planeFromCraniocaudalDeg, trueOffsetMm, lengthMm } = facts;
    return {
      findings: alignmentFindings(facts),
      facts: { trueBendDeg: trueAngulationDeg, planeFromCraniocaudalDeg, shiftMm: trueOffsetMm, lengthMm },
    };
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

function byAxes({ craniocaudal, mediolateral }: Views, betweenViewsDeg: number): Alignment | null {
  const [frontal, sagittal] = [craniocaudal, mediolateral].map((film) => film && axisOf(film));
  const findings = [
    ...(frontal ? [bendFinding('craniocaudal', frontal.bendDeg)] : []),
    ...(sagittal ? [bendFinding('mediolateral', sagittal.bendDeg)] : []),
  ];
  if (!frontal || !sagittal) return findings.length > 0 ? { findings, facts: null } : null;
  const bends = [frontal.bendDeg, sagittal.bendDeg];
  const { trueAngulationDeg, planeFromFirstViewDeg } = trueAngle(
    [bends[0]?.value ?? 0, bends[1]?.value ?? 0],
    betweenViewsDeg,
  );
  const spread = (of: readonly (Measured | undefined)[]) => Math.hypot(...of.map((m) => m?.sd ?? 0));
  return {
    findings,
    facts: {
      trueBendDeg: { value: trueAngulationDeg, sd: spread(bends) },
      planeFromCraniocaudalDeg: { value: planeFromFirstViewDeg, sd: null },
      shiftMm: together(frontal.shiftMm, sagittal.shiftMm),
      lengthMm: { value: null, sd: null, why: 'the walls were not traced' },
    },
  };
}

/** Two shifts square to each other as one. */
function together(a: Measured, b: Measured): Measured {
  if (a.value === null) return a;
  if (b.value === null) return b;
  return { value: Math.hypot(a.value, b.value), sd: Math.hypot(a.sd ?? 0, b.sd ?? 0) };
}

/** Along the traced axes where there are any, else through the four clicks. */
function axisOf(film: FilmState) {
  const clicks = film.clicks?.value;
  const segments = hasWalls(film)
    ? film.trace?.value.segments.map(({ name, axis }) => ({ name, ...axis }))
    : clicks?.segments;
  const [proximal, distal] = segments ?? [];
  return clicks && proximal && distal ? axisByClicks([proximal, distal], clicks.columnTowards, scaleOf(film)) : null;
}

/** Of the trace, else the plan's own millimetres as they lie on the film. */
function scaleOf({ trace, placing }: FilmState): Measured {
  if (trace) return trace.value.mmPerPixel;
  const placed = placing ? placePlan(placing.value.matches, placing.value.isMirrored) : null;
  const pxPerMm = placed && isPlaced(placed) ? placed.pxPerMm : null;
  if (!pxPerMm?.value) return { value: null, sd: null, why: 'the film has no scale' };
  return { value: 1 / pxPerMm.value, sd: (pxPerMm.sd ?? 0) / pxPerMm.value ** 2 };
}

export function alignmentBefore(state: CaseState): Alignment | null {
  const before = filmsBefore(state);
  return alignmentOf(
    { craniocaudal: filmOfView(before, 'craniocaudal'), mediolateral: filmOfView(before, 'mediolateral') },
    betweenViews(state),
  );
}

const SQUARE_DEG = 90;
export const betweenViews = (state: CaseState): number => state.bone?.value.betweenViewsDeg ?? SQUARE_DEG;

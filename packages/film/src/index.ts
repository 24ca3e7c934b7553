export { isZip, type ZipEntry, zipEntries, zipEntry } from './archive/zip.ts';
export { calibrate, type Scale } from './calibrate/calibrate.ts';
export type { NoBall } from './calibrate/find-ball.ts';
export { type FittedBall, fitBall } from './calibrate/fit-ball.ts';
export { correctedTrace } from './correct/corrected-trace.ts';
export {
  type Correction,
  type EdgePlaced,
  type StationLeftOut,
  WALL_SIDES,
  type WallSide,
} from './correct/correction.ts';
export { configureCodecs, prepareCodecs } from './decode/compressed/codecs.ts';
export { decodeFilm, isFilmKind } from './decode/decode-film.ts';
export { describeFilm, storedBytes } from './decode/describe-film.ts';
export { LARGEST_FILE_BYTES } from './decode/limits.ts';
export { PERSONAL_FACTS, personalFacts, publicHeader } from './decode/personal.ts';
export { type DecodeReply, decodeToReply, filmOf, repliedBuffers } from './decode/reply.ts';
export { withoutNames } from './decode/without-names.ts';
export { type Look, windowToBytes } from './grey/display.ts';
export { greyImage } from './grey/grey-image.ts';
export { looksOf, type NamedLook, suggestWindow } from './grey/looks.ts';
export { cutOut, halved, type Region } from './grey/parts.ts';
export { type Corners, sizeOfFilm, squaredSize, squareUp } from './grey/square-up.ts';
export { lookedUp, modalityValue, type VoiFunction, type Window, windowed } from './grey/voi.ts';
export { writePng } from './grey/write-png.ts';
export { type AlignmentChange, alignmentChange, alignmentFindings, bendFinding } from './later/alignment-findings.ts';
export { type AxisByClicks, axisByClicks } from './later/axis-by-clicks.ts';
export { findPins, type PinSearch } from './later/find-pins.ts';
export type { Finding } from './later/finding.ts';
export {
  CORTEX_GRADES,
  CORTICES,
  type Cortex,
  type HealingPoint,
  type HealingSeries,
  healingSeries,
  type Recheck,
  rustOf,
  type UnionScale,
  type UnionThreshold,
} from './later/healing-series.ts';
export { expectedRods, type PinAgainstPlan, type PlannedRod, pinsAgainstPlan } from './later/pins-against-plan.ts';
export {
  isPlaced,
  type Match,
  type NotPlaced,
  onFilm,
  onPlan,
  type Placing,
  type PlanPoint,
  placePlan,
  placeSdMm,
} from './later/place-plan.ts';
export { type Landmark, mirroredBy, planLandmarks } from './later/plan-landmarks.ts';
export { plannedRods, type RodFigure } from './later/planned-rods.ts';
export { type ExpectedRod, type FoundRod, isFound, type NoRod, type RodEnd } from './later/rod.ts';
export { type ClicksByPlan, clicksByPlan } from './later/trace-by-plan.ts';
export { angleByHand, angleOfLines, diameterByHand, type HandMeasured, lengthByHand } from './measure/by-hand.ts';
export type * from './model/film.ts';
export type * from './model/trace.ts';
export { fragment, isFlare, type LongBone, outerAt, shaft } from './projector/long-bone.ts';
export { type Camera, type FilmKind, project, type Scene, shadowOf } from './projector/project.ts';
export { type RandomFilm, randomFilm } from './projector/random-film.ts';
export { ball, box, rod, type Solid } from './projector/solids.ts';
export type { Tube } from './projector/tube.ts';
export { type Frame3, frameAlong, toWorld, type Vector } from './projector/vector.ts';
export { traceFilm } from './trace/trace-film.ts';
export { joinViews } from './views/join-views.ts';
export { readAlignRequest, readTraceRequest } from './views/read-requests.ts';
export { reducedBone } from './views/reduced-bone.ts';
export {
  type BrokenEnds,
  fullReduction,
  type ReductionFacts,
  type ReductionMarks,
  type ReductionMove,
  reducedBy,
  reductionFacts,
} from './views/reduction.ts';
export { type TrueAngle, trueAngle } from './views/true-angle.ts';

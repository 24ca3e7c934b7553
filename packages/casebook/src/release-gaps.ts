/** What speaks against release as the record stands. It refuses nothing: each line asks for a reason. */
import { readinessFor, releaseLimits } from '@bonewright/ward';
import type { CaseState } from './case-state.ts';
import { isFrameOn } from './frame-on.ts';
import { latestMass } from './latest-mass.ts';

/** A line for each thing that is not met, not looked at or not known; `on` is the day of release, `2026-11-25`. */
export function releaseGaps(state: CaseState, on: string): string[] {
  return [...readinessGaps(state), ...gapsBesideList(state, on)];
}

/** The same without the lines of the list of readiness. */
export function gapsBesideList(state: CaseState, on: string): string[] {
  return [...boneGaps(state), ...limitGaps(state), ...nightGaps(state, on)];
}

const speciesOf = ({ patient }: CaseState): string => patient?.value.species ?? '';

function readinessGaps(state: CaseState): string[] {
  const { course } = state;
  return readinessFor(speciesOf(state)).flatMap(({ id, asks }) => {
    const said = course.readiness.find(({ value }) => value.item === id)?.value.isMet ?? 'not looked';
    return said === 'yes' || said === 'does not apply' ? [] : [`${asks}: ${said}.`];
  });
}

function boneGaps(state: CaseState): string[] {
  const { union, frameTaken } = state.course;
  const weighedAt = latestMass(state)?.at ?? null;
  const wasFixed = state.theatre.pins.some(({ placed }) => placed !== null);
  return [
    isFrameOn(state) && 'The frame is on, as far as the record knows.',
    frameTaken?.value.isAllOut === false && 'Not all that went in came out.',
    frameTaken && weighedAt && weighedAt < frameTaken.value.at && 'It was not weighed since the frame came off.',
    wasFixed && !union.hand?.value.isUnited && 'Nobody signed that the bone is firm under the hand.',
    wasFixed && !union.film?.value.isUnited && 'Nobody signed that the film shows it across.',
  ].filter((line) => typeof line === 'string');
}

function limitGaps(state: CaseState): string[] {
  const mass = latestMass(state);
  if (mass === null) return ['It was never weighed without a frame.'];
  return releaseLimits(speciesOf(state)).flatMap(({ subject, asks, sources }) => {
    const limit = sources.find(({ id }) => id === chosenLimit(state, subject));
    if (!limit) return [`Sources disagree and none was chosen. ${asks}`];
    if (subject === 'mass' && mass.massG < limit.value)
      return [`It weighs ${mass.massG} g, under the ${limit.value} g that were chosen.`];
    const lowestC = state.course.forecast?.value.lowestC;
    if (subject === 'night' && lowestC !== undefined && lowestC <= limit.value)
      return [`The forecast is ${lowestC} °C, not above the ${limit.value} °C that were chosen.`];
    return [];
  });
}

function nightGaps({ course: { forecast } }: CaseState, on: string): string[] {
  if (!forecast) return ['No forecast was written down.'];
  return forecast.value.night === on ? [] : [`The forecast is for ${forecast.value.night}, not for ${on}.`];
}

/** The id of the source that was chosen for that subject. */
export const chosenLimit = ({ course }: CaseState, subject: string): string | null =>
  course.limits.find(({ value }) => value.subject === subject)?.value.evidenceId ?? null;

/** What is due for a patient, by when and by whom, as its record stands. No clock: whoever shows it knows what day it is. */
import { tellsVet } from '@bonewright/ward';
import type { CaseState } from './case-state.ts';

export interface Due {
  readonly what: string;
  /** `2026-11-27`; before that day it is ahead, after it overdue. */
  readonly on: string;
  readonly who: string;
}

/** The earliest first. */
export function dueOf(state: CaseState): Due[] {
  const due = hasGone(state)
    ? outcomesDue(state)
    : [...questionsDue(state), ...looksDue(state), ...pinSitesDue(state), ...frameDue(state)];
  return due.toSorted((a, b) => a.on.localeCompare(b.on));
}

/** It went back, or an end was recorded. */
export const hasGone = ({ course }: CaseState): boolean => course.released !== null || course.patient !== null;

const dayOf = (moment: string): string => moment.slice(0, 10);

function outcomesDue({ course: { released, bone, patient } }: CaseState): Due[] {
  const missing = [bone === null && 'of the bone', patient === null && 'of the patient'].filter(Boolean);
  const since = released?.value.at ?? patient?.at;
  if (missing.length === 0 || since === undefined) return [];
  return [{ what: `Write the outcome ${missing.join(' and ')}`, on: dayOf(since), who: 'surgeon' }];
}

const questionsDue = ({ care }: CaseState): Due[] =>
  care.questions
    .filter(({ answered }) => answered === null)
    .map(({ asked: { value } }) => ({ what: `Answer: ${value.words}`, on: dayOf(value.at), who: 'surgeon or nurse' }));

/** A look that was set is done once somebody looked, or took a film, on that day or later. */
function looksDue(state: CaseState): Due[] {
  const looks = looksAt(state);
  return looksSet(state).filter(({ on }) => !looks.some((day) => day >= on));
}

/** Every look that was set, past ones too; the day in the aftercare counts once. */
export function looksSet({ course, care }: CaseState): Due[] {
  const set = course.rechecks.map(({ value: { on, what, who } }) => ({ what, on, who: who || 'nobody named' }));
  const planned = care.aftercare?.value.recheckOn ?? null;
  const isSetToo = set.some(({ on }) => on === planned);
  return planned === null || isSetToo ? set : [...set, { what: 'Recheck', on: planned, who: 'nobody named' }];
}

function looksAt({ films, care, course, scores }: CaseState): string[] {
  const { hand, film } = course.union;
  return [
    ...films.map(({ file }) => file.value.takenAt ?? file.at),
    ...care.pinSites.filter(({ value }) => value.isSeenInPerson).map(({ value }) => value.at),
    ...care.limbUse.map(({ value }) => value.at),
    ...scores.map(({ at }) => at),
    ...[hand, film, course.frameOff].flatMap((said) => (said ? [said.at] : [])),
  ].map(dayOf);
}

/** A grade that tells a vet stays due until that pin is seen again and no longer has it. */
function pinSitesDue({ care, course }: CaseState): Due[] {
  if (course.frameTaken) return [];
  const last = new Map(care.pinSites.map(({ value }) => [value.pin, value]));
  return [...last.values()]
    .filter(({ scale, grade }) => tellsVet(scale, grade))
    .map(({ pin, grade, at }) => ({
      what: `Look at ${pin === null ? 'the pins' : `P${pin}`}: ${grade}`,
      on: dayOf(at),
      who: 'surgeon',
    }));
}

function frameDue({ course: { frameOff, frameTaken, readiness } }: CaseState): Due[] {
  if (frameTaken) {
    const isFilmed = readiness.some(
      ({ value: { item, isMet } }) => item === 'film-after-removal' && isMet !== 'no' && isMet !== 'not looked',
    );
    return isFilmed ? [] : [{ what: 'Film after the frame came off', on: dayOf(frameTaken.value.at), who: 'surgeon' }];
  }
  return frameOff?.value.isToComeOff ? [{ what: 'Take the frame off', on: dayOf(frameOff.at), who: 'surgeon' }] : [];
}

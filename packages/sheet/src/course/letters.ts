/** Letters out of the record: to whoever sent the patient, to the rescue, to the finder. They say what is recorded and promise nothing. */
import { hasGone, isFrameOn, latestMass, operatedAt } from '@bonewright/casebook';
import { localMoment } from '../doses/dose-facts.ts';
import { boxes, type CoursePaperFacts, coursePaper, dayInWords } from './course-frame.ts';

const CAUTION = 'Made from the record as it stood when it was printed. Read it before you sign it.';
const TEXT = { size: 11 };

interface Letter {
  readonly title: string;
  readonly to: string;
  readonly paragraphs: readonly string[];
}

const letter = (of: (facts: CoursePaperFacts) => Letter) => async (facts: CoursePaperFacts) => {
  const { title, to, paragraphs } = of(facts);
  const on = coursePaper(facts, title, CAUTION);
  on.flow.paragraph(`To ${to || '______________________________'}`, { size: 12, face: 'strong' });
  for (const words of paragraphs.filter(Boolean)) on.flow.paragraph(words, TEXT);
  boxes(on, ['place and day', 'signed']);
  return on.paper.finish();
};

/** To the vet or rescue that sent it: findings, what is in the animal, what was given, what is asked now. */
export const referralBack = letter((facts) => ({
  title: 'Referral back',
  to: nameOf(facts, 'rescue'),
  paragraphs: [came(facts), injury(facts), operation(facts), given(facts), healing(facts), next(facts), outcome(facts)],
}));

/** To the rescue, in plain words. */
export const rescueReport = letter((facts) => ({
  title: 'Report to the rescue',
  to: nameOf(facts, 'rescue'),
  paragraphs: [came(facts), operation(facts), healing(facts), care(facts), next(facts), outcome(facts)],
}));

/** To the finder: thanks, where it was, how it is. No addresses of others, no promise. */
export const finderThanks = letter((facts) => ({
  title: 'Thank you',
  to: nameOf(facts, 'finder'),
  paragraphs: [
    `Thank you for the ${facts.state.patient?.value.species ?? 'animal'}${place(facts)}. Without somebody who stops and rings, nobody could have looked at it.`,
    operation(facts) ? `Its ${bone(facts)} was broken and was held with pins.` : `Its ${bone(facts)} was broken.`,
    outcome(facts) ||
      'It is still in care. How it ends cannot be promised; where it can go back, it goes back to where you found it.',
  ],
}));

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const nameOf = ({ state }: CoursePaperFacts, who: 'finder' | 'rescue'): string =>
  state.admission.noted?.value[who]?.name ?? '';

const bone = ({ state }: CoursePaperFacts): string =>
  `${state.patient?.value.side ?? ''} ${state.patient?.value.bone ?? 'bone'}`.trim();

function place({ state }: CoursePaperFacts): string {
  const words = state.admission.noted?.value.place?.words;
  return words ? ` that you found at ${words}` : ' that you found';
}

const at = ({ minutesEastOfUtc }: CoursePaperFacts, iso: string): string => localMoment(iso, minutesEastOfUtc);

function came(facts: CoursePaperFacts): string {
  const { patient, admission, openedAt } = facts.state;
  const { species, ageClass, sex, number } = patient?.value ?? {};
  const { place: found, cause } = admission.noted?.value ?? {};
  const who = [`${capital(species ?? 'patient')} ${number}`, ageClass, sex === 'unknown' ? 'sex unknown' : sex]
    .filter(Boolean)
    .join(', ');
  return `${who}, came on ${at(facts, openedAt)}${found ? `, found at ${found.words}` : ''}${cause ? ` (${cause})` : ''}.`;
}

function injury(facts: CoursePaperFacts): string {
  const { wound, boneShows, feels, bloodReaches, otherInjuries, givenBefore } =
    facts.state.admission.noted?.value ?? {};
  const said = [
    wound && `skin ${wound}`,
    boneShows && `bone showing: ${boneShows}`,
    feels && `feeling below: ${feels}`,
    bloodReaches && `warm and pink below: ${bloodReaches}`,
    otherInjuries && `other injuries: ${otherInjuries}`,
    givenBefore && `given before: ${givenBefore}`,
  ].filter(Boolean);
  return `Fracture of the ${bone(facts)}${said.length > 0 ? `; ${said.join('; ')}` : ''}.`;
}

function operation(facts: CoursePaperFacts): string {
  const { state } = facts;
  const placed = state.theatre.pins.filter((pin) => pin.placed !== null);
  const when = operatedAt(state);
  if (placed.length === 0 || when === null) return '';
  const im = state.construct?.value.construct.im ? ' and an IM pin' : '';
  return `Operated on ${at(facts, when)}: external fixator of ${placed.length} ${placed.length === 1 ? 'pin' : 'pins'}${im}. ${
    isFrameOn(state) ? 'The frame is on.' : frameWords(facts)
  }`;
}

function frameWords(facts: CoursePaperFacts): string {
  const taken = facts.state.course.frameTaken;
  if (!taken) return '';
  const { at: when, isAllOut, words } = taken.value;
  return `The frame came off on ${at(facts, when)}, ${isAllOut ? 'all implants out' : `not all implants out: ${words}`}.`;
}

function given(facts: CoursePaperFacts): string {
  const doses = facts.state.doses.flatMap(({ line, given: dose, voided }) =>
    dose && !voided
      ? [`${line.drug} ${line.dose.value} ${line.dose.unit} ${line.route}, ${at(facts, dose.value.at)}`]
      : [],
  );
  return doses.length > 0 ? `Given here: ${doses.join('; ')}.` : 'No given dose is in this record.';
}

function healing({ state: { course } }: CoursePaperFacts): string {
  const fact = (by: string, said: typeof course.union.hand) =>
    said ? `by ${by}: ${said.value.isUnited ? 'united' : 'not united'} (${said.by})` : `by ${by}: not judged`;
  return `Union ${fact('hand', course.union.hand)}; ${fact('film', course.union.film)}.`;
}

function care({ state }: CoursePaperFacts): string {
  const mass = latestMass(state);
  const { aftercare } = state.care;
  const weighs = mass ? `It weighs ${mass.massG} g without a frame.` : 'It was never weighed without a frame.';
  return `${weighs} ${aftercare && !hasGone(state) ? `Aftercare was written by ${aftercare.by}; the sheet for carers goes with it.` : ''}`.trim();
}

function next({ state }: CoursePaperFacts): string {
  if (hasGone(state)) return '';
  const days = state.course.rechecks.map(
    ({ value }) => `${dayInWords(value.on)}: ${value.what}${value.who ? `, ${value.who}` : ''}`,
  );
  const planned = state.care.aftercare?.value.recheckOn;
  if (days.length === 0 && planned) return `Next look: ${dayInWords(planned)}.`;
  return days.length > 0 ? `Looks set: ${days.join('; ')}.` : '';
}

function outcome(facts: CoursePaperFacts): string {
  const { released, bone: ofBone, patient } = facts.state.course;
  return [
    released &&
      `It was released on ${at(facts, released.value.at)}${released.value.isWhereFound ? ', where it was found' : ''}.`,
    ofBone && `The bone: ${ofBone.value.bone}.`,
    patient && `The patient: ${patient.value.patient}.`,
  ]
    .filter(Boolean)
    .join(' ');
}

/** The history as a story: one sentence an event, past tense, the thing first. */
import { type CaseEvent, isKnown, type Payload, type RecordedEvent } from './events.ts';
import { admissionSentence } from './kinds/admission.ts';
import { careSentence } from './kinds/care.ts';
import { chartSentence } from './kinds/chart.ts';
import { courseSentence } from './kinds/course.ts';
import { doseSentence, isOfDoses } from './kinds/doses.ts';
import { handMeasuredWords } from './kinds/hand-measures.ts';

/** What happened, in words, without who and when. */
export function sentenceOf(event: RecordedEvent): string {
  if (!isKnown(event)) return `Something that needs a newer version of Bonewright to read (${event.kind}).`;
  const said = sentence(event);
  return event.why === undefined ? said : `${said} Why: ${event.why}`;
}

function sentence(event: CaseEvent): string {
  if (isOfDoses(event)) return doseSentence(event);
  const { kind, payload } = event;
  switch (kind) {
    case 'case-opened':
      return `Case ${payload.number} opened: ${payload.species}, ${massWords(payload.massG)}, ${payload.side} ${payload.bone}.`;
    case 'patient-amended':
      return `Patient amended: ${amendments(payload)}.`;
    case 'film-added':
      return `${payload.photograph ? 'Photograph of a film' : 'Film'} ${payload.fileName} added${payload.view ? `, ${payload.view} view` : ''}.`;
    case 'film-removed':
      return 'Film taken out of the case; its file is kept.';
    case 'film-view-set':
      return `Film said to be the ${payload.view} view.`;
    case 'film-occasion-set':
      return `Film said to be from ${occasionWords[payload.occasion]}.`;
    case 'film-calibrated':
      return `Film calibrated ${calibrationWords[payload.calibration.kind]}.`;
    case 'film-clicked':
      return `${payload.segments.length * 2} clicks placed on the film.`;
    case 'film-traced':
      return `Walls traced at ${stationCount(payload.trace)} stations.`;
    case 'film-corrected':
      return payload.corrections.length === 0
        ? 'Corrections of the trace taken back.'
        : `Trace corrected by hand at ${payload.corrections.length} places.`;
    case 'fracture-marked':
      return 'Fracture marked on the film.';
    case 'hand-measured':
      return handMeasuredWords(payload);
    case 'hand-measure-taken-back':
      return 'Measurement by hand taken back.';
    case 'admission-noted':
    case 'course-decided':
      return admissionSentence(event);
    case 'reading-taken':
    case 'reading-taken-back':
    case 'chart-marked':
    case 'blood-lost':
    case 'fluid-given':
    case 'fluids-planned':
    case 'feed-planned':
    case 'check-ticked':
      return chartSentence(event);
    case 'weighed':
    case 'fed':
    case 'pin-site-seen':
    case 'limb-use-seen':
    case 'photo-added':
    case 'question-asked':
    case 'question-answered':
    case 'aftercare-planned':
      return careSentence(event);
    case 'union-judged':
    case 'frame-off-decided':
    case 'frame-taken-off':
    case 'recheck-set':
    case 'readiness-noted':
    case 'limit-chosen':
    case 'forecast-noted':
    case 'released':
    case 'sighted':
    case 'bone-outcome':
    case 'patient-outcome':
      return courseSentence(event);
    case 'bone-joined':
      return `Both views joined into one bone of ${mmWords(payload.bone.lengthMm.value)}.`;
    case 'bone-reduced':
      return `Bone reduced on the screen, ${bendWords(payload.bone.angulationDeg.true.value)}.`;
    case 'fracture-described':
      return `Fracture described: ${payload.fromMm.toFixed(1)} to ${mmWords(payload.toMm)}, gap ${mmWords(payload.gapMm)}${payload.comminuted ? ', comminuted' : ''}.`;
    case 'keep-out-set':
      return `Keep-outs set: ${mmWords(payload.proximalMm)} proximally, ${mmWords(payload.distalMm)} distally.`;
    case 'corridors-set':
      return `Corridors set: ${payload.corridors.length}.`;
    case 'soft-tissue-set':
      return `Depth of soft tissue given at ${payload.softTissueMm.length} places.`;
    case 'drawer-set':
      return `Drawer set: ${payload.pins.length} kinds of pin, ${payload.imPins.length} of IM pin, ${payload.columns.length} of column.`;
    case 'construct-chosen':
      return `Construct chosen: ${constructWords(payload.construct)}.`;
    case 'plans-ranked':
      return `Plans ranked: ${payload.plans.length} offered of ${payload.candidates} looked at.`;
    case 'sheet-printed':
      return 'Theatre sheet printed.';
    case 'stage-entered':
      return `Stage entered: ${payload.stage}.`;
    case 'note-added':
      return `Note: ${payload.text}`;
    case 'pin-placed':
      return `P${payload.pin} placed at ${mmWords(payload.sMm)}${payload.cortices === 1 ? ', through one wall' : ''}.${payload.note ? ` ${payload.note}` : ''}`;
    case 'pin-skipped':
      return payload.triedMm === null
        ? `P${payload.pin} left out: ${payload.why}.`
        : `P${payload.pin} would not go in at ${mmWords(payload.triedMm)}: ${payload.why}.`;
    case 'pin-taken-back':
      return `Entry for P${payload.pin} taken back.`;
    case 'putty-mixed':
      return `Putty mixed: ${payload.grams} g.`;
    case 'putty-hard':
      return 'Putty hard.';
    case 'counted':
      return `${payload.what} counted: ${payload.in} in, ${payload.out} out.`;
    case 'plan-placed':
      return `Plan laid over a later film by ${payload.matches.length} points.`;
    case 'cortices-scored':
      return `Union scored on day ${payload.day}: ${scoreWords(payload)}.`;
    case 'bench-tested':
      return `Putty of ${payload.columnId} tested: modulus ${testedWords(payload.youngMPa)}${payload.yieldMPa ? `, strength ${testedWords(payload.yieldMPa)}` : ', not broken'}.`;
  }
}

function scoreWords({ scale, scores }: Payload<'cortices-scored'>): string {
  const seen = Object.values(scores).filter((score) => score !== null);
  const sum = seen.reduce((total, score) => total + score, 0);
  return seen.length === 4 ? `${scale} ${sum}` : `${scale} ${sum} from ${seen.length} of 4 cortices`;
}

const massWords = (massG: number | null): string => (massG === null ? 'not weighed' : `${massG} g`);
const mmWords = (mm: number | null): string => (mm === null ? 'unmeasured length' : `${mm.toFixed(1)} mm`);
const testedWords = ({ value, sd }: { readonly value: number; readonly sd: number }): string =>
  `${value.toPrecision(3)} ± ${sd.toPrecision(2)} MPa`;
const bendWords = (deg: number | null): string =>
  deg === null ? 'the bend that is left is not measured' : `${deg.toFixed(1)} degrees of bend left`;
const occasionWords = {
  before: 'before the operation',
  'in theatre': 'theatre',
  after: 'after the operation',
  recheck: 'a recheck',
  'after removal': 'after removal of the frame',
};
const calibrationWords = {
  ball: 'on a ball',
  scale: 'on a scale',
  implant: 'on an implant',
  geometry: 'from the geometry of the set-up',
};

const amendedNames: Record<string, string> = { massG: 'mass in g', weighedAt: 'weighed at', ageClass: 'age class' };

function amendments(payload: Readonly<Record<string, unknown>>): string {
  return Object.entries(payload)
    .map(([key, value]) => `${amendedNames[key] ?? key} ${value ?? 'unknown'}`)
    .join(', ');
}

function stationCount(trace: { readonly segments: readonly { readonly stations: readonly unknown[] }[] }): number {
  return trace.segments.reduce((count, { stations }) => count + stations.length, 0);
}

function constructWords(construct: { readonly pins: readonly unknown[]; readonly im?: unknown }): string {
  return `${construct.pins.length} pins${construct.im ? ' and an IM pin' : ''}`;
}

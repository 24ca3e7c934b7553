/** The demonstration's cases. Everything in them is measured and planned by the program itself, on the projector's films. */
import { createHash } from 'node:crypto';
import { type CaseEvent, caseFileOf, foldCase, summarisePlan, summariseRanking } from '@bonewright/casebook';
import { type Case, type Construct, rank } from '@bonewright/construct';
import {
  correctedTrace,
  type GreyImage,
  joinViews,
  type Pixel,
  type Towards,
  type TraceRequest,
  traceFilm,
} from '@bonewright/film';
import { CaseWriter } from './case-writer.ts';
import { drawer } from './drawer.ts';
import { laterFilmsOf } from './films/index.ts';
import { CARER, type DemoPatient, NURSE, type Slip, SURGEON } from './patients.ts';
import { asOperated, repairOf } from './repair.ts';
import { tellAdmission, tellSleep, tellVisit } from './ward-story.ts';

/** One film of a patient, with what a surgeon would click on it. */
interface DemoFilm {
  readonly view: 'craniocaudal' | 'mediolateral';
  readonly fileName: string;
  /** The file as an X-ray machine would write it. */
  readonly bytes: Uint8Array;
  readonly image: GreyImage;
  readonly request: TraceRequest;
  readonly columnTowards: Towards;
  readonly fractureLine: readonly [Pixel, Pixel];
  readonly boneEnds: readonly [Pixel, Pixel];
}

export interface DemoCase {
  readonly events: readonly CaseEvent[];
  /** The files that its events name. */
  readonly files: readonly Uint8Array[];
}

/** The whole case of a patient from its two films, as it would stand now. Takes seconds: it measures and plans. */
export function demoCase(patient: DemoPatient, films: readonly DemoFilm[], now: Date): DemoCase {
  const admittedAt = new Date(now.getTime() - patient.admittedMinutesAgo * 60_000);
  const writer = new CaseWriter(`demo-${patient.key}`, admittedAt);
  admit(writer, patient);
  measure(writer, patient, films);
  if (patient.isPlanned) plan(writer, patient);
  const later = patient.later.length > 0 ? operate(writer, patient) : [];
  return { events: writer.events, files: [...films, ...later].map(({ bytes }) => bytes) };
}

function admit(writer: CaseWriter, { key, admission, story, later }: DemoPatient): void {
  writer.sign(NURSE, 'case-opened', { ...admission, weighedAt: writer.now(), demonstration: true });
  writer.sign(CARER, 'note-added', { text: story, stage: 'admission' });
  tellAdmission(writer, key, later.length > 0);
  writer.wait(20);
}

function measure(writer: CaseWriter, { key }: DemoPatient, films: readonly DemoFilm[]): void {
  for (const film of films) writer.sign(NURSE, 'film-added', addedFilm(writer, filmId(key, film.view), film));
  for (const { view, image, request, columnTowards, fractureLine, boneEnds } of films) {
    const film = { filmId: filmId(key, view) };
    writer.sign(SURGEON, 'film-calibrated', { ...film, calibration: request.calibration });
    writer.sign(SURGEON, 'film-clicked', { ...film, segments: request.segments, columnTowards, boneEnds });
    writer.sign(SURGEON, 'film-traced', { ...film, trace: traceFilm(image, request) });
    writer.sign(SURGEON, 'fracture-marked', { ...film, line: fractureLine });
  }
}

function addedFilm(writer: CaseWriter, id: string, { view, fileName, bytes, image }: DemoFilm) {
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const size = { byteLength: bytes.length, rows: image.rows, cols: image.cols };
  return { filmId: id, sha256, fileName, ...size, view, takenAt: writer.now() };
}

const filmId = (key: string, view: string): string => `demo-${key}-${view}`;

function plan(writer: CaseWriter, patient: DemoPatient): void {
  join(writer, patient);
  writer.sign(NURSE, 'drawer-set', drawer);
  const { caseFile, missing } = caseFileOf(foldCase(writer.events));
  if (!caseFile) throw new Error(`the demonstration's ${patient.key} cannot be planned: ${missing.join(' ')}`);
  const ranking = rank(caseFile);
  writer.sign(SURGEON, 'plans-ranked', summariseRanking(ranking));
  const [best] = ranking.plans;
  if (!best) return;
  const { construct, ...summary } = summarisePlan(best);
  writer.sign(SURGEON, 'construct-chosen', { construct, summary });
}

function join(writer: CaseWriter, { key, fractureGapMm, keepOut, corridorDeg, softTissueDepthMm }: DemoPatient): void {
  const views = foldCase(writer.events).films.map((film) => {
    if (!film.trace || !film.clicks || !film.fractureLine) throw new Error(`a film of the ${key} was not traced`);
    const { columnTowards, boneEnds } = film.clicks.value;
    const trace = correctedTrace(film.trace.value, film.corrections?.value ?? []);
    return { trace, columnTowards, boneEnds, fractureLine: film.fractureLine.value };
  });
  const [craniocaudal, mediolateral] = views;
  if (!craniocaudal || !mediolateral) throw new Error(`the ${key} needs two films`);
  const bone = joinViews(craniocaudal, mediolateral, 90);
  const { fromMm, obliquityDeg } = bone.fracture;
  const toMm = Math.max(bone.fracture.toMm, fromMm + fractureGapMm);
  const lengthMm = bone.lengthMm.value ?? toMm;
  const filmIds = [filmId(key, 'craniocaudal'), filmId(key, 'mediolateral')] as const;
  writer.sign(SURGEON, 'bone-joined', { filmIds, bone });
  writer.sign(SURGEON, 'fracture-described', { fromMm, toMm, gapMm: fractureGapMm, obliquityDeg });
  writer.sign(SURGEON, 'keep-out-set', keepOut);
  const reach = { fromMm: keepOut.proximalMm, toMm: lengthMm - keepOut.distalMm };
  writer.sign(SURGEON, 'corridors-set', { corridors: [{ ...reach, aboutDeg: corridorDeg }] });
  const [proximal, distal] = softTissueDepthMm;
  const softTissueMm = [
    { sMm: 0, depthMm: proximal },
    { sMm: lengthMm, depthMm: distal },
  ];
  writer.sign(SURGEON, 'soft-tissue-set', { softTissueMm });
}

const TO_FIRST_PIN_MINUTES = 25;
const MINUTES_A_PIN = 6;
const HARD_MINUTES = 15;
const MINUTES_A_DAY = 1440;

/** What was done in theatre and at the visits after it; the films that were taken then. */
function operate(writer: CaseWriter, patient: DemoPatient): readonly DemoFilm[] {
  const constructSeq = foldCase(writer.events).construct?.seq;
  if (constructSeq !== undefined) writer.sign(SURGEON, 'sheet-printed', { constructSeq, sha256: null });
  writer.sign(SURGEON, 'stage-entered', { stage: 'theatre' });
  writer.wait(TO_FIRST_PIN_MINUTES);
  const operated = placePins(writer, patient.slips);
  closeUp(writer);
  tellSleep(writer, patient.key);
  const films: DemoFilm[] = [];
  for (const [i, { days, stage, text, films: taken }] of patient.later.entries()) {
    const before = patient.later[i - 1];
    writer.wait((days - (before?.days ?? 0)) * MINUTES_A_DAY);
    if (stage !== before?.stage) writer.sign(NURSE, 'stage-entered', { stage });
    writer.sign(NURSE, 'note-added', { text, stage });
    tellVisit(writer, patient.key, i, operated?.construct.pins.length ?? 0);
    if (taken && operated) films.push(...filmAgain(writer, patient, operated, { ...taken, days }));
  }
  return films;
}

/** Every pin as it went in; null where nothing was planned. */
function placePins(writer: CaseWriter, slips: readonly Slip[]): Operated | null {
  const { caseFile } = caseFileOf(foldCase(writer.events));
  if (!caseFile?.construct) return null;
  const construct = asOperated(caseFile.construct, slips);
  for (const [i, { sMm, aboutDeg, tiltDeg, cortices = 2 }] of construct.pins.entries()) {
    writer.wait(MINUTES_A_PIN);
    writer.sign(NURSE, 'pin-placed', { pin: i + 1, sMm, aboutDeg, tiltDeg, cortices });
  }
  return { caseFile, construct };
}

interface Operated {
  readonly caseFile: Case;
  readonly construct: Construct;
}

type Visit = NonNullable<DemoPatient['later'][number]['films']> & { readonly days: number };

function filmAgain(
  writer: CaseWriter,
  { key }: DemoPatient,
  { caseFile, construct }: Operated,
  { days, callus, occasion, scores }: Visit,
): readonly DemoFilm[] {
  const day = Math.floor(days);
  const films = laterFilmsOf(key, repairOf(caseFile, construct, day, callus));
  const idOf = ({ view }: DemoFilm) => `${filmId(key, view)}-day-${day}`;
  for (const film of films) {
    writer.sign(NURSE, 'film-added', { ...addedFilm(writer, idOf(film), film), occasion });
  }
  if (scores) writer.sign(SURGEON, 'cortices-scored', { scale: 'mRUST', day, filmIds: films.map(idOf), scores });
  return films;
}

/** Putty over the pins, then the counts. */
function closeUp(writer: CaseWriter): void {
  const frameG = foldCase(writer.events).construct?.value.summary?.massG ?? 0;
  writer.sign(NURSE, 'putty-mixed', { grams: Math.max(1, Math.ceil(frameG)), at: writer.now(), workingMinutes: null });
  writer.wait(HARD_MINUTES);
  writer.sign(NURSE, 'putty-hard', { at: writer.now() });
  for (const [what, count] of COUNTED) writer.sign(NURSE, 'counted', { what, in: count, out: count });
}

const COUNTED = [
  ['swabs', 10],
  ['needles', 3],
  ['blades', 1],
] as const;

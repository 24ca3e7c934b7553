/** The demonstration's cases. Everything in them is measured and planned by the program itself, on the projector's films. */
import { createHash } from 'node:crypto';
import { type CaseEvent, caseFileOf, foldCase, summarisePlan, summariseRanking } from '@bonewright/casebook';
import { rank } from '@bonewright/construct';
import { type GreyImage, joinViews, type Pixel, type Towards, type TraceRequest, traceFilm } from '@bonewright/film';
import { CaseWriter } from './case-writer.ts';
import { drawer } from './drawer.ts';
import { CARER, type DemoPatient, NURSE, SURGEON } from './patients.ts';

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
  if (patient.later.length > 0) operate(writer, patient);
  return { events: writer.events, files: films.map(({ bytes }) => bytes) };
}

function admit(writer: CaseWriter, { admission, story }: DemoPatient): void {
  writer.sign(NURSE, 'case-opened', { ...admission, weighedAt: writer.now(), demonstration: true });
  writer.sign(CARER, 'note-added', { text: story, stage: 'admission' });
  writer.wait(20);
}

function measure(writer: CaseWriter, { key }: DemoPatient, films: readonly DemoFilm[]): void {
  for (const { view, fileName, bytes, image } of films) {
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const size = { byteLength: bytes.length, rows: image.rows, cols: image.cols };
    writer.sign(NURSE, 'film-added', {
      filmId: filmId(key, view),
      sha256,
      fileName,
      ...size,
      view,
      takenAt: writer.now(),
    });
  }
  for (const { view, image, request, columnTowards, fractureLine, boneEnds } of films) {
    const film = { filmId: filmId(key, view) };
    writer.sign(SURGEON, 'film-calibrated', { ...film, calibration: request.calibration });
    writer.sign(SURGEON, 'film-clicked', { ...film, segments: request.segments, columnTowards, boneEnds });
    writer.sign(SURGEON, 'film-traced', { ...film, trace: traceFilm(image, request) });
    writer.sign(SURGEON, 'fracture-marked', { ...film, line: fractureLine });
  }
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
    return { trace: film.trace.value, columnTowards, boneEnds, fractureLine: film.fractureLine.value };
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

const OPERATION_MINUTES = 90;
const MINUTES_A_DAY = 1440;

function operate(writer: CaseWriter, { later }: DemoPatient): void {
  const constructSeq = foldCase(writer.events).construct?.seq;
  if (constructSeq !== undefined) writer.sign(SURGEON, 'sheet-printed', { constructSeq, sha256: null });
  writer.sign(SURGEON, 'stage-entered', { stage: 'theatre' });
  writer.wait(OPERATION_MINUTES);
  for (const [i, { days, stage, text }] of later.entries()) {
    const before = later[i - 1];
    writer.wait((days - (before?.days ?? 0)) * MINUTES_A_DAY);
    if (stage !== before?.stage) writer.sign(NURSE, 'stage-entered', { stage });
    writer.sign(NURSE, 'note-added', { text, stage });
  }
}

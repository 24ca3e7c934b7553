/** What each kind of event says: one schema a kind. A key may be added here as optional; changing one is a new schema version. */
import { caseFileSchema, constructSchema, drawerSchema, fractureSchema, LOADS } from '@bonewright/construct';
import { z } from 'zod';
import {
  calibrationSchema,
  correctionSchema,
  joinedBoneSchema,
  lineSchema,
  matchSchema,
  pairSchema,
  segmentClicksSchema,
  towardsSchema,
  traceSchema,
  viewSchema,
} from './film-shapes.ts';
import { occasionSchema } from './kinds/film-occasion.ts';

export const idSchema = z.string().regex(/^[A-Za-z0-9_-]{8,64}$/, 'an id is 8 to 64 letters, digits, - or _');
const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 is 64 lower-case hex digits');
export const timeSchema = z.iso.datetime('a time is written like 2026-11-25T23:10:00Z');

export const STAGES = ['admission', 'films', 'plan', 'theatre', 'recovery', 'rechecks', 'release'] as const;
const stageSchema = z.enum(STAGES);
export type Stage = z.output<typeof stageSchema>;

const shortText = z.string().max(200);
const patient = {
  species: shortText.min(1),
  /** What the ward calls it; empty where it has no name. */
  name: shortText,
  /** Null where it has not been weighed. */
  massG: z.number().positive().nullable(),
  weighedAt: timeSchema.nullable(),
  ageClass: shortText,
  sex: z.enum(['female', 'male', 'unknown']),
  bone: shortText.min(1),
  side: z.enum(['left', 'right']),
};

export const caseOpened = z.strictObject({
  /** As written on the cage card: `26-041`. */
  number: shortText.min(1),
  ...patient,
  demonstration: z.boolean().default(false),
});

export const patientAmended = z
  .strictObject(patient)
  .partial()
  .refine((changes) => Object.keys(changes).length > 0, 'an amendment changes at least one thing');

export const filmAdded = z.strictObject({
  filmId: idSchema,
  sha256: sha256Schema,
  fileName: shortText,
  byteLength: z.number().int().positive(),
  rows: z.number().int().positive(),
  cols: z.number().int().positive(),
  /** Null until somebody says which view it is. */
  view: viewSchema.nullable(),
  takenAt: timeSchema.nullable(),
  /** Squared up from a photograph of a film: its greys are not those of the film, its angles hold, its lengths only once calibrated. */
  photograph: z.literal(true).exactOptional(),
  /** Where it is known as the film is added; absent, it follows from the dates. */
  occasion: occasionSchema.exactOptional(),
});

const filmId = { filmId: idSchema };
export const filmRemoved = z.strictObject(filmId);
export const filmViewSet = z.strictObject({ ...filmId, view: viewSchema });
export const filmOccasionSet = z.strictObject({ ...filmId, occasion: occasionSchema });
export const filmCalibrated = z.strictObject({ ...filmId, calibration: calibrationSchema });
export const filmClicked = z.strictObject({
  ...filmId,
  /** Proximal fragment first, each from its proximal end. */
  segments: z.array(segmentClicksSchema).min(1).max(2),
  /** The side of the patient that the film's +column direction shows. */
  columnTowards: towardsSchema,
  /** The bone's proximal and distal end, where they lie beyond the outer clicks. */
  boneEnds: lineSchema.exactOptional(),
});
export const filmTraced = z.strictObject({ ...filmId, trace: traceSchema });
/** All corrections that stand, of the trace as it was made; an empty list takes them all back. */
export const filmCorrected = z.strictObject({ ...filmId, corrections: z.array(correctionSchema) });
export const fractureMarked = z.strictObject({ ...filmId, line: lineSchema });

export const boneJoined = z.strictObject({
  /** The craniocaudal film, then the mediolateral one. */
  filmIds: z.tuple([idSchema, idSchema]),
  /** The angle between the two beams. */
  betweenViewsDeg: z.number().positive().max(180).default(90),
  bone: joinedBoneSchema,
});

/** How the distal fragment was moved on the screen from where the films show it, and the bone as it then stands. */
export const boneReduced = z.strictObject({
  move: z.strictObject({
    /** Pairs are [craniocaudal, mediolateral]: towards medial and cranial. */
    translationMm: pairSchema,
    angulationDeg: pairSchema,
    lengthMm: z.number(),
    rotationDeg: z.number(),
  }),
  /** Middles of the broken faces, proximal then distal, where somebody marked them: they give the shortening. */
  brokenEnds: z
    .strictObject({ craniocaudal: lineSchema.exactOptional(), mediolateral: lineSchema.exactOptional() })
    .exactOptional(),
  /** What is planned on from here. */
  bone: joinedBoneSchema,
});

/** The chosen plan laid over a later film. */
export const planPlaced = z.strictObject({
  ...filmId,
  matches: z.array(matchSchema).min(3),
  isMirrored: z.boolean().exactOptional(),
});

const cortexScore = z.number().int().min(1).max(4).nullable();

/** Scores of union as somebody read them from the films of one day; null where a cortex is not seen. */
export const corticesScored = z
  .strictObject({
    scale: z.enum(['RUST', 'mRUST']),
    /** Days from the operation. */
    day: z.number().min(0),
    filmIds: z.array(idSchema),
    scores: z.strictObject({ medial: cortexScore, lateral: cortexScore, cranial: cortexScore, caudal: cortexScore }),
  })
  .refine(({ scale, scores }) => scale === 'mRUST' || Object.values(scores).every((s) => s === null || s <= 3), {
    message: 'RUST scores a cortex from 1 to 3',
    path: ['scores'],
  });

export const fractureDescribed = fractureSchema;
export const keepOutSet = caseFileSchema.shape.keepOut.unwrap();
export const corridorsSet = z.strictObject({ corridors: caseFileSchema.shape.corridors.unwrap() });
export const softTissueSet = z.strictObject({ softTissueMm: caseFileSchema.shape.softTissueMm.unwrap() });
export const drawerSet = drawerSchema;

const planSummary = z.strictObject({
  label: z.string(),
  lastResort: z.boolean(),
  construct: constructSchema,
  verdict: z.enum(['good', 'watch', 'stop']),
  worst: z.strictObject({
    load: z.enum(LOADS),
    p05: z.number(),
    p50: z.number(),
    p95: z.number(),
    weakest: z.string(),
  }),
  holes: z.number().int(),
  massG: z.number(),
});

export const constructChosen = z.strictObject({
  construct: constructSchema,
  /** What the assessment said when it was chosen; null where it was not assessed. */
  summary: planSummary.omit({ construct: true }).nullable(),
});

export const plansRanked = z.strictObject({
  plans: z.array(planSummary),
  candidates: z.number().int(),
  solved: z.number().int(),
  refused: z.array(z.strictObject({ check: z.string(), count: z.number().int() })),
  nearest: z.string().exactOptional(),
});

export const sheetPrinted = z.strictObject({
  /** The number of the event that chose the construct on the sheet. */
  constructSeq: z.number().int().positive(),
  /** The sheet itself, where it was kept. */
  sha256: sha256Schema.nullable(),
});

export const stageEntered = z.strictObject({ stage: stageSchema });
export const noteAdded = z.strictObject({ text: z.string().min(1).max(20_000), stage: stageSchema.nullable() });

/** Counted from 1 as on the plan's drawings. */
const pinNumber = z.number().int().positive();

/** Where a pin really went; the same pin again is a correction, and says why. */
export const pinPlaced = z.strictObject({
  pin: pinNumber,
  sMm: z.number().min(0),
  aboutDeg: z.number(),
  tiltDeg: z.number(),
  /** 1 where it stops short of the far wall. */
  cortices: z.union([z.literal(1), z.literal(2)]),
  note: shortText.exactOptional(),
});

export const pinSkipped = z.strictObject({
  pin: pinNumber,
  /** What kept it from going in. */
  why: shortText.min(1),
  /** Where it was tried; it is planned elsewhere. Null where it is left out altogether. */
  triedMm: z.number().min(0).nullable(),
});

/** What was entered for a pin does not stand: it is to be placed again. */
export const pinTakenBack = z.strictObject({ pin: pinNumber });

export const puttyMixed = z.strictObject({
  grams: z.number().positive(),
  /** When kneading began. */
  at: timeSchema,
  /** As the surgeon read it on the packet; null where none was typed. */
  workingMinutes: z.number().positive().nullable(),
});

export const puttyHard = z.strictObject({ at: timeSchema });

/** Swabs, needles, blades: how many went to the table and how many came back. */
export const counted = z.strictObject({
  what: shortText.min(1),
  in: z.number().int().min(0),
  out: z.number().int().min(0),
});

/** A figure of a bench test. */
export const tested = z.strictObject({ value: z.number().positive(), sd: z.number().min(0) });

/** A bar of the practice's own putty was bent. */
export const benchTested = z.strictObject({
  /** Which column of the drawer it stands for. */
  columnId: z.string().min(1),
  youngMPa: tested,
  /** Bending strength; null where the bar was not broken. */
  yieldMPa: tested.nullable(),
  testedAt: timeSchema,
  note: shortText.exactOptional(),
});

/**
 * Calibrations, clicks, traces and the joined bone as they stand in a record: plain data with the shapes that the
 * film package measures. Pixels are [column, row]; pairs of millimetres are [craniocaudal, mediolateral].
 */
import { z } from 'zod';

const positive = z.number().positive();
const notNegative = z.number().min(0);

export const pixelSchema = z.tuple([z.number(), z.number()]);
export const lineSchema = z.tuple([pixelSchema, pixelSchema]);
export const viewSchema = z.enum(['craniocaudal', 'mediolateral']);
export const towardsSchema = z.enum(['medial', 'lateral', 'cranial', 'caudal']);

const measuredSchema = z.strictObject({
  value: z.number().nullable(),
  sd: z.number().nullable(),
  why: z.string().exactOptional(),
});

export const calibrationSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('ball'),
    diameterMm: positive,
    near: pixelSchema,
    sourceToDetectorMm: positive.optional(),
    ballToDetectorMm: notNegative.optional(),
    objectToDetectorMm: notNegative.optional(),
  }),
  z.strictObject({ kind: z.literal('scale'), mmPerPixel: positive, sdPercent: notNegative.optional() }),
  z.strictObject({ kind: z.literal('implant'), diameterMm: positive, across: lineSchema }),
  z.strictObject({
    kind: z.literal('geometry'),
    sourceToDetectorMm: positive,
    objectToDetectorMm: notNegative,
    detectorPitchMm: positive,
  }),
]);

export const segmentClicksSchema = z.strictObject({ name: z.string().min(1), from: pixelSchema, to: pixelSchema });

const traceStationSchema = z.strictObject({
  sMm: z.number(),
  centre: pixelSchema,
  outerMm: measuredSchema,
  canalMm: measuredSchema,
  walls: z.strictObject({ outer: lineSchema.nullable(), canal: lineSchema.nullable() }),
});

export const traceSchema = z.strictObject({
  mmPerPixel: measuredSchema,
  ball: z
    .strictObject({ centre: pixelSchema, shortAxisPx: positive, longAxisPx: positive, angleDeg: z.number() })
    .nullable(),
  ballHeightErrorPercent: z.number().nullable(),
  segments: z.array(
    z.strictObject({
      name: z.string(),
      axis: z.strictObject({ from: pixelSchema, to: pixelSchema }),
      stations: z.array(traceStationSchema),
      notes: z.array(z.string()),
    }),
  ),
  angulationDeg: measuredSchema,
  translationMm: measuredSchema,
});

/** An edge that lies at the level of `place`, or a station that is not to be believed. */
export const correctionSchema = z.union([
  z.strictObject({
    segment: z.string().min(1),
    sMm: z.number(),
    side: z.enum(['outer-left', 'outer-right', 'canal-left', 'canal-right']),
    place: pixelSchema,
  }),
  z.strictObject({ segment: z.string().min(1), sMm: z.number(), exclude: z.literal(true) }),
]);

/** One point in the plan's figure, mm, and on the film. */
export const matchSchema = z.strictObject({ plan: z.tuple([z.number(), z.number()]), film: pixelSchema });

export const pairSchema = z.tuple([z.number(), z.number()]);

export const joinedBoneSchema = z.strictObject({
  lengthMm: measuredSchema,
  stations: z.array(
    z.strictObject({
      sMm: z.number(),
      outerMm: pairSchema,
      canalMm: pairSchema.nullable(),
      offsetMm: pairSchema,
      sdMm: notNegative,
    }),
  ),
  fracture: z.strictObject({ fromMm: z.number(), toMm: z.number(), obliquityDeg: z.number() }),
  angulationDeg: z.strictObject({ craniocaudal: measuredSchema, mediolateral: measuredSchema, true: measuredSchema }),
  planeFromCraniocaudalDeg: measuredSchema,
  translationMm: measuredSchema,
  narrowestCanalMm: measuredSchema.extend({ sMm: z.number(), view: z.string() }).nullable(),
  warnings: z.array(z.string()),
});

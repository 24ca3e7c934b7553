/**
 * The case that mechanics needs: patient, bone as reduced, fracture, drawer, and perhaps a chosen construct.
 * s runs in mm from the proximal to the distal end of the bone as reduced, its gap included.
 * Pairs are [craniocaudal view, mediolateral view], so [medial to lateral, cranial to caudal].
 * aboutDeg 0 is medial, +90 cranial.
 */
import { z } from 'zod';

const mm = z.number().min(0);
const positiveMm = z.number().positive();
const pair = z.tuple([positiveMm, positiveMm]);
const offset = z.tuple([z.number(), z.number()]);
const stretch = z.tuple([mm, mm]);

export const stationSchema = z.strictObject({
  sMm: mm,
  outerMm: pair,
  /** Null where no canal edge could be found. */
  canalMm: z.tuple([mm, mm]).nullable(),
  /** The axis off the straight line between the bone's ends, [medial, cranial] positive. */
  offsetMm: offset.default([0, 0]),
  sdMm: mm.default(0.05),
});

export const patientSchema = z.looseObject({
  species: z.string().min(1),
  massG: z.number().positive(),
  ageClass: z.string().optional(),
  /** Where the species' name does not say it. */
  class: z.enum(['bird', 'mammal']).optional(),
});

export const boneSchema = z.looseObject({
  name: z.string(),
  side: z.enum(['left', 'right']).optional(),
  lengthMm: positiveMm,
  stations: z.array(stationSchema).min(2),
  youngMPa: z.number().positive().optional(),
});

export const fractureSchema = z.looseObject({
  fromMm: mm,
  toMm: mm,
  gapMm: mm,
  obliquityDeg: z.number().min(0).max(85).default(0),
  comminuted: z.boolean().default(false),
  fissuresMm: z.array(stretch).default([]),
});

/** What the user asks the construct to bear, instead of the registry's figures. */
export const loadsSchema = z.looseObject({
  axialN: z.number().positive().optional(),
  bendingNmm: z.number().positive().optional(),
  torsionNmm: z.number().positive().optional(),
  cyclesPerDay: z.number().positive().optional(),
  days: z.number().positive().optional(),
});

const override = { youngMPa: z.number().positive().optional(), yieldMPa: z.number().positive().optional() };

export const drawerPinSchema = z.looseObject({
  id: z.string().min(1),
  diameterMm: positiveMm,
  kind: z.enum(['smooth', 'threaded-end', 'threaded-centre', 'needle']),
  coreDiameterMm: positiveMm.optional(),
  gauge: z.number().int().optional(),
  material: z.string(),
  count: z.number().int().min(0),
  ...override,
});

export const drawerImPinSchema = z.looseObject({
  id: z.string().min(1),
  diameterMm: positiveMm,
  material: z.string(),
  count: z.number().int().min(0),
  ...override,
});

export const drawerColumnSchema = z.looseObject({
  id: z.string().min(1),
  material: z.string(),
  diameterMm: positiveMm,
  ...override,
  /** How far the stated figures may be off, as standard deviations: a bench test knows; absent they are taken as exact. */
  youngSdMPa: mm.optional(),
  yieldSdMPa: mm.optional(),
});

export const drawerSchema = z.looseObject({
  pins: z.array(drawerPinSchema),
  imPins: z.array(drawerImPinSchema).default([]),
  columns: z.array(drawerColumnSchema),
});

export const columnChoiceSchema = z.looseObject({
  drawerId: z.string(),
  clearanceMm: mm,
  side: z.enum(['near', 'far']).optional(),
});

export const constructSchema = z.looseObject({
  im: z
    .looseObject({ drawerId: z.string(), tiedIn: z.boolean().default(false) })
    .nullable()
    .optional(),
  pins: z
    .array(
      z.looseObject({
        drawerId: z.string(),
        /** Where the pin's line crosses the bone's axis. */
        sMm: mm,
        /** 0 is square to the axis; positive leans the outer end distally. */
        tiltDeg: z.number().default(0),
        aboutDeg: z.number().default(0),
        /** 1 where the pin stops short of the far wall; 2 otherwise. */
        cortices: z.union([z.literal(1), z.literal(2)]).optional(),
      }),
    )
    .min(1),
  column: z.union([columnChoiceSchema, z.array(columnChoiceSchema).min(1).max(2)]),
  grip: z.enum(['usual', 'bonded']).default('usual'),
});

export const caseFileSchema = z.looseObject({
  patient: patientSchema,
  bone: boneSchema,
  fracture: fractureSchema,
  keepOut: z.looseObject({ proximalMm: mm, distalMm: mm }).optional(),
  corridors: z.array(z.looseObject({ fromMm: mm, toMm: mm, aboutDeg: z.tuple([z.number(), z.number()]) })).optional(),
  softTissueMm: z.array(z.looseObject({ sMm: mm, depthMm: mm })).optional(),
  drawer: drawerSchema,
  construct: constructSchema.optional(),
  loads: loadsSchema.optional(),
  seed: z.number().int().default(1),
  samples: z.number().int().min(10).max(20_000).default(300),
});

/** A case as written in a file or sent by a form, defaults not yet filled in. */
export type CaseFile = z.input<typeof caseFileSchema>;
/** A case that has been checked, defaults filled in. */
export type Case = z.output<typeof caseFileSchema>;
export type Construct = z.output<typeof constructSchema>;
export type Drawer = z.output<typeof drawerSchema>;
export type DrawerPin = z.output<typeof drawerPinSchema>;
export type DrawerImPin = z.output<typeof drawerImPinSchema>;
export type DrawerColumn = z.output<typeof drawerColumnSchema>;
export type BoneInput = z.output<typeof boneSchema>;
export type FractureInput = z.output<typeof fractureSchema>;
export type StationInput = z.output<typeof stationSchema>;

import { z } from 'zod'
import { lengthMmSchema, temperatureDegCSchema } from './primitives'

/** How moisture is kept out of, or driven out of, a part before it is soldered. */
export const DRYING_METHODS = ['bake', 'dry-pack'] as const
/** Who says what drying a part needs. */
export const DRYING_AUTHORITIES = ['film-maker', 'assembler', 'own-trial'] as const
/** What holds a flat part while paste, components and heat come. */
export const CARRIERS = ['pallet', 'array-frame', 'vacuum-plate', 'tape', 'nothing'] as const
export const PACKING_FORMS = ['flat-between-boards', 'trays', 'carrier', 'reel', 'bags'] as const

const hoursSchema = z.number().positive('must be greater than 0 h').max(1000, 'must be at most 1000 h')

/** How the part is dried, held, soldered and packed. Nulls are not known yet. */
export const assemblySchema = z.strictObject({
  /** Highest temperature of the solder profile, on the part. */
  solderPeakDegC: temperatureDegCSchema.nullable(),
  /** What the coverlay and its adhesive bear in soldering, the lower of the two, by the maker's sheet. */
  coverlayRatingDegC: temperatureDegCSchema.nullable(),
  carrier: z.enum(CARRIERS).nullable(),
  drying: z.enum(DRYING_METHODS).nullable(),
  bakeDegC: temperatureDegCSchema.nullable(),
  bakeHours: hoursSchema.nullable(),
  /** From the oven, or from opening the dry pack, to soldering. */
  toSolderHours: hoursSchema.nullable(),
  dryingSetBy: z.enum(DRYING_AUTHORITIES).nullable(),
  packedAs: z.enum(PACKING_FORMS).nullable(),
  isDryPacked: z.boolean().nullable(),
  storageMonths: z.number().positive('must be greater than 0').max(240, 'must be at most 240').nullable(),
})

/** Tolerances that the drawing gives, each as plus or minus. Nulls are not known yet. */
export const tolerancesSchema = z.strictObject({
  outlineMm: lengthMmSchema.nullable(),
  holeMm: lengthMmSchema.nullable(),
  holeToEdgeMm: lengthMmSchema.nullable(),
  stiffenerMm: lengthMmSchema.nullable(),
  coverlayMm: lengthMmSchema.nullable(),
  /** Where the axis of a bend lies, as the part is bent. */
  bendPositionMm: lengthMmSchema.nullable(),
})

/** The array in which parts come to assembly, as its drawing has it. Nulls are not known yet. */
export const arraySchema = z.strictObject({
  partCount: z.int('must be a whole number').positive().max(10_000).nullable(),
  frameWidthMm: lengthMmSchema.nullable(),
  /** No tab joins a flexible edge. */
  tabsOffFlex: z.boolean().nullable(),
  fiducials: z.boolean().nullable(),
  toolingHoles: z.boolean().nullable(),
  badPartMark: z.boolean().nullable(),
})

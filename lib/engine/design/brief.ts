import { z } from 'zod'
import { BRIEF_TERMS, outgassingListSchema } from './brief-terms'
import { dateSchema, nameSchema, percentSchema, temperatureDegCSchema, textSchema } from './primitives'

/** Surface finishes in the trade's words. */
export const SURFACE_FINISHES = [
  'immersion-gold-over-electroless-nickel',
  'immersion-gold-over-palladium-nickel',
  'electroplated-nickel-gold',
  'immersion-tin',
  'immersion-silver',
  'organic-solderability-preservative',
  'hot-air-solder-levelled',
  'none',
] as const

/** Finishes without metal, and no finish: nothing that a connector would feel. */
export function isWithoutMetal(finish: (typeof SURFACE_FINISHES)[number] | null): boolean {
  return finish === 'none' || finish === 'organic-solderability-preservative'
}

/** Finishes with nickel beneath another metal. */
export function hasNickel(finish: (typeof SURFACE_FINISHES)[number]): boolean {
  return (
    finish === 'immersion-gold-over-electroless-nickel' ||
    finish === 'immersion-gold-over-palladium-nickel' ||
    finish === 'electroplated-nickel-gold'
  )
}

/** Construction types of IPC-6013 (Qualification and Performance Specification for Flexible/Rigid-Flexible Printed Boards). */
export const CIRCUIT_TYPES = ['type-1', 'type-2', 'type-3', 'type-4', 'type-5'] as const

/** Uses of IPC-6013: A flex during installation, B continuous flexing, C above 105 °C, D for recognised flammability ratings. */
export const INSTALLATION_USES = ['use-a', 'use-b', 'use-c', 'use-d'] as const

/** Quality of the plating on hole walls, in the words of the handbook that rates it (SOURCES.holePlatingQuality). */
export const HOLE_PLATING_QUALITIES = ['extraordinary', 'superior', 'good', 'marginal', 'poor'] as const

export const PANEL_FORMS = ['single-parts', 'assembly-arrays', 'fabricator-decides'] as const

/**
 * What the part is for and under which conditions it must work. Every field that a person may not
 * know yet is nullable: the engine then says "not computed" and names the field.
 */
export const briefSchema = z
  .strictObject({
    partNumber: z.string().trim().max(60, 'is longer than 60 characters'),
    /** As older documents state it. Nothing reads it any more: the label is the revision's own. */
    revisionLabel: z.string().trim().max(20, 'is longer than 20 characters'),
    purpose: textSchema,
    performanceClass: z.enum(['class-1', 'class-2', 'class-3']).nullable(),
    circuitType: z.enum(CIRCUIT_TYPES).nullable(),
    /** All that apply: hot and flame-rated come on top of how the part is flexed. Empty is not known yet. */
    installationUses: z.array(z.enum(INSTALLATION_USES)).max(INSTALLATION_USES.length),
    operatingMinDegC: temperatureDegCSchema.nullable(),
    operatingMaxDegC: temperatureDegCSchema.nullable(),
    /** At which the part lies flat with nothing holding it: what its layers expand from there curls it. */
    flatAtDegC: temperatureDegCSchema.nullable(),
    /** Temperature cycles of service or of a test that plated holes must outlast; the ends of each cycle. */
    cycleMinDegC: temperatureDegCSchema.nullable(),
    cycleMaxDegC: temperatureDegCSchema.nullable(),
    temperatureCycles: z.number().positive('must be greater than 0').max(1e9, 'must be at most 1e9').nullable(),
    /** How good the fabricator's plating of hole walls is known to be. */
    holePlatingQuality: z.enum(HOLE_PLATING_QUALITIES).nullable(),
    quantityPerYear: z.int('must be a whole number').positive().max(1_000_000_000).nullable(),
    surfaceFinish: z.enum(SURFACE_FINISHES).nullable(),
    solderedAssembly: z.boolean().nullable(),
    bakeBeforeAssembly: textSchema,
    packingAndHandling: textSchema,
    panelForm: z.enum(PANEL_FORMS).nullable(),
    toleranceScheme: textSchema,
    electricalTest: z.boolean().nullable(),
    couponTest: z.boolean().nullable(),
    foldTest: z.boolean().nullable(),
    registrationCriticalFeatures: textSchema,
    whoToAsk: nameSchema.or(z.literal('')),
    manufacturingReviewDate: dateSchema.nullable(),
    layoutFreezeDate: dateSchema.nullable(),
    needDate: dateSchema.nullable(),
    /** Survival percentile for fatigue life; null takes the labelled default. */
    lifeSurvivalPct: percentSchema.nullable(),
    /** Weibull slope of fatigue scatter; null takes the labelled default (no published slope for flex copper was found). */
    lifeWeibullSlope: z.number().min(0.5).max(20).nullable(),
    /** Key of the radius-to-thickness table that the review compares with; null takes the default one. */
    ratioTableKey: z.string().max(60).nullable(),
    ...BRIEF_TERMS,
    outgassing: outgassingListSchema,
  })
  .refine(
    (brief) =>
      brief.operatingMinDegC === null ||
      brief.operatingMaxDegC === null ||
      brief.operatingMinDegC <= brief.operatingMaxDegC,
    { path: ['operatingMaxDegC'], message: 'must not be below the lowest operating temperature' },
  )
  .refine(
    (brief) => brief.cycleMinDegC === null || brief.cycleMaxDegC === null || brief.cycleMinDegC < brief.cycleMaxDegC,
    { path: ['cycleMaxDegC'], message: 'must be above the cold end of the cycle' },
  )

export type Brief = z.infer<typeof briefSchema>

import { z } from 'zod'
import { idSchema, nameSchema, temperatureDegCSchema, textSchema } from './primitives'

export const MATERIAL_KINDS = [
  'copper-foil',
  'polymer-film',
  'adhesive',
  'prepreg',
  'rigid-laminate',
  'solder-mask',
  'metal-sheet',
  'shield-film',
] as const
export type MaterialKind = (typeof MATERIAL_KINDS)[number]

/** `plated` is copper that a plating bath adds to a foil; it is never the foil itself. */
export const FOIL_TYPES = ['rolled-annealed', 'electrodeposited', 'plated'] as const
export type FoilType = (typeof FOIL_TYPES)[number]

/** A key of SOURCES, or a source in somebody's own words for a material of their own. */
const sourceKeySchema = z.string().min(1, 'is empty').max(200, 'is longer than 200 characters')

/**
 * Each constant names its source: a number without one is not usable in a review. `spread` is the lowest and highest
 * value that parts of this description have, with a source of its own; null where nobody stated one, and a labelled default stands in.
 */
const sourcedNumber = (schema: z.ZodNumber) =>
  z
    .strictObject({
      value: schema,
      sourceKey: sourceKeySchema,
      spread: z.strictObject({ low: schema, high: schema, sourceKey: sourceKeySchema }).nullable(),
    })
    .refine(({ value, spread }) => spread === null || (spread.low <= value && value <= spread.high), {
      path: ['spread'],
      message: 'low and high must lie on either side of the value',
    })

/**
 * A generic material. `specification` is the sheet by which it is called out (for example an IPC-4203 or
 * IPC-4562 sheet number), never a brand.
 */
export const materialSchema = z.strictObject({
  id: idSchema,
  name: nameSchema,
  kind: z.enum(MATERIAL_KINDS),
  specification: z.string().trim().max(80),
  modulusGpa: sourcedNumber(z.number().positive('must be greater than 0 GPa').max(1000)),
  poisson: sourcedNumber(z.number().min(0).lt(0.5, 'must be below 0.5')),
  densityGPerCm3: sourcedNumber(z.number().positive().max(25)).nullable(),
  /** Highest continuous service temperature. */
  maxServiceDegC: sourcedNumber(temperatureDegCSchema as z.ZodNumber).nullable(),
  /**
   * Highest peak of a solder profile that it bears, by the maker's sheet. Of the library only films that no ordinary profile spares state one: solder
   * floats of 10 s are printed for laminates, and say nothing of a profile that lasts minutes.
   */
  maxSolderDegC: sourcedNumber(temperatureDegCSchema as z.ZodNumber).nullable(),
  relativePermittivity: sourcedNumber(z.number().min(1).max(100)).nullable(),
  /** Thermal expansion in plane. */
  expansionPpmPerC: sourcedNumber(z.number().min(-50).max(1000)).nullable(),
  /** Strain past which a film or adhesive no longer springs back, in per cent; copper has a yield strength instead. */
  yieldStrainPct: sourcedNumber(z.number().positive().max(100)).nullable(),
  /** Share of its thickness that can flow into gaps in lamination; null where all of it can. */
  flowFraction: sourcedNumber(z.number().min(0).max(1)).nullable(),
  /** Copper only. */
  foil: z
    .strictObject({
      type: z.enum(FOIL_TYPES),
      yieldStrengthMpa: sourcedNumber(z.number().positive().max(5000)),
      tensileStrengthMpa: sourcedNumber(z.number().positive().max(5000)),
      /** True strain at fracture in fatigue, not per cent. */
      fatigueDuctility: sourcedNumber(z.number().positive().max(5)),
      /** Allowable elongation in one fold and in flexing to install, in per cent; null where none was found. */
      allowableFoldOncePct: sourcedNumber(z.number().positive().max(100)).nullable(),
      allowableInstallPct: sourcedNumber(z.number().positive().max(100)).nullable(),
      resistivityOhmMm2PerM: sourcedNumber(z.number().positive().max(10)),
    })
    .nullable(),
  /** Where the record as a whole comes from, and what is uncertain in it. */
  note: textSchema,
})

export type Material = z.infer<typeof materialSchema>
export type SourcedNumber = Material['modulusGpa']

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

export const FOIL_TYPES = ['rolled-annealed', 'electrodeposited'] as const
export type FoilType = (typeof FOIL_TYPES)[number]

/** Each constant names its source (a key of SOURCES): a number without one is not usable in a review. */
const sourcedNumber = (schema: z.ZodNumber) => z.strictObject({ value: schema, sourceKey: z.string().min(1).max(60) })

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
  relativePermittivity: sourcedNumber(z.number().min(1).max(100)).nullable(),
  /** Copper foils only. */
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

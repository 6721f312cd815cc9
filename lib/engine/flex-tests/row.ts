import { z } from 'zod'
import { dateSchema, temperatureDegCSchema, textSchema, thicknessUmSchema } from '../design/primitives'
import { MAX_CYCLES } from '../life'
import { findLibraryMaterial } from '../materials'

/** What was flexed: conductors in a circuit, or strips of bare foil over mandrels, as foil makers test ductility. */
export const FLEX_TEST_KINDS = { circuit: 'circuit', 'bare-foil': 'bare foil' } as const
export const FLEX_TEST_MOTIONS = { 'one-way': 'one way', reversed: 'reversed' } as const
export const FLEX_TEST_RESULTS = { failed: 'failed', survived: 'survived' } as const

const label = z
  .string()
  .trim()
  .min(1, 'is empty')
  .max(60, 'is longer than 60 characters')
  .regex(/^[^\p{Cc}\p{Cs}]*$/u, 'holds a control character')

/** One specimen of a flex test. Rows with one name of a set belong together. */
export const flexTestRowSchema = z.strictObject({
  set: label,
  specimen: label,
  kind: z.enum(['circuit', 'bare-foil']),
  /** Id of a foil of the material library. */
  foil: z
    .string()
    .refine(
      (id) => findLibraryMaterial(id)?.kind === 'copper-foil',
      'is not a copper foil of the material library; a foil of one design alone carries its constants itself',
    ),
  foilUm: thicknessUmSchema,
  /** Of what was bent: the flexible zone, or the strip of foil with its treatment. */
  thicknessUm: thicknessUmSchema,
  /** Inside radius, or that of the mandrel. */
  insideRadiusMm: z.number().positive('must be greater than 0 mm').max(1000, 'must be at most 1000 mm'),
  motion: z.enum(['one-way', 'reversed']),
  /** Of the copper over one cycle, computed or measured for what was tested; null is not known. Of bare foil it follows from the mandrel. */
  strainRangePct: z.number().positive('must be greater than 0 %').max(100, 'must be at most 100 %').nullable(),
  /** Out and back is one. At failure, or at the end of the test where it survived. */
  cycles: z.number().min(1, 'must be at least 1 cycle').max(MAX_CYCLES, 'must be at most 1e12 cycles'),
  result: z.enum(['failed', 'survived']),
  temperatureDegC: temperatureDegCSchema.nullable(),
  testedOn: dateSchema.nullable(),
  laboratory: z.string().trim().max(120, 'is longer than 120 characters'),
  report: z.string().trim().max(120, 'is longer than 120 characters'),
  /** What was tested, in words: coverlay, adhesive, conductor width. */
  note: textSchema,
})

export type FlexTestRow = z.infer<typeof flexTestRowSchema>

/** A sheet of tests is some pages of numbers: more would take a request longer to fit than it should. Our choice. */
export const MAX_FLEX_TEST_ROWS = 500
/** Bounds of each radius take all others of its set into account: the work grows with their square. Our choice. */
export const MAX_RADII_OF_SET = 8

import { z } from 'zod'
import { timeSchema } from './parts'

export const verdictSchema = z.enum([
  'meets',
  'thin-margin',
  'fails',
  'cannot-tell',
  'not-computed',
  'not-applicable',
  'needs-judgment',
])

const countSchema = z.record(z.string(), z.int().nonnegative())
export const countsSchema = z
  .strictObject({ computed: countSchema, typed: countSchema, stated: countSchema, judgment: countSchema })
  .meta({ description: 'How many items of each basis came to each verdict.' })

const outcomeSchema = z
  .looseObject({
    kind: z.enum(['decided', 'said', 'withheld', 'cannot-tell', 'not-computed', 'not-applicable']),
    summary: z.string(),
    places: z.array(z.looseObject({ kind: z.string(), id: z.string(), name: z.string() })),
  })
  .meta({
    description: 'What was found at these places. A decided one has value, limit and margin in the unit of the limit.',
  })

const itemSchema = z.strictObject({
  itemId: z.string(),
  basis: z.enum(['computed', 'typed', 'stated', 'judgment']),
  verdict: verdictSchema,
  outcomes: z.array(outcomeSchema),
  headline: z.string(),
  followsFrom: z.array(z.string()).optional(),
})

/** Figures of zones, bends and conductors carry their unit in their names; which there are depends on the engine that computed them. */
const figures = z.array(z.looseObject({}))

export const resultsFileSchema = z
  .strictObject({
    cautions: z.array(z.string()),
    sources: z.record(z.string(), z.strictObject({ citation: z.string(), kind: z.string() })),
    designHash: z.string().optional(),
    limitsHash: z.string().optional(),
    engineVersion: z.string().optional(),
    evaluatedAt: timeSchema.optional(),
    results: z
      .looseObject({ items: z.array(itemSchema), zones: figures, bends: figures, conductors: figures })
      .optional(),
  })
  .meta({ description: 'The results themselves are absent where none were recorded.' })

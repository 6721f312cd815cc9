import { z } from 'zod'
import { RELEASE_PURPOSES, type ReleaseTerms } from '@/lib/review'
import { daySchema, sha256Schema, timeSchema } from './parts'

const termFields = {
  isConditional: z.boolean(),
  purpose: z.enum(RELEASE_PURPOSES).nullable(),
  quantityLimit: z.int().positive().nullable(),
  validUntil: daySchema.nullable().meta({ description: 'The last day on which it counts.' }),
  conditions: z.string(),
  changeNumber: z.string(),
  reason: z.string().meta({ description: 'Why there is this revision.' }),
  effectivity: z.string().meta({ description: 'From which lot, serial number or date it takes effect.' }),
} satisfies { [K in keyof ReleaseTerms]: z.ZodType<ReleaseTerms[K]> }

/** What a document system files a package by. */
export const releaseFileSchema = z.strictObject({
  format: z.literal('bendworthy-release'),
  formatVersion: z.literal(1),
  number: z.string().meta({ description: 'Part number.' }),
  revision: z.string(),
  title: z.string(),
  project: z.string(),
  organisation: z.string(),
  statusAtRelease: z
    .enum(['released', 'released conditionally'])
    .meta({ description: 'On the day of the release. What became of it since stands in a status list.' }),
  ...termFields,
  releasedAt: timeSchema,
  releasedBy: z.string(),
  approvers: z.array(z.strictObject({ name: z.string(), capacity: z.string(), signedAt: timeSchema })),
  replaces: z.string().nullable().meta({ description: 'Label of the revision that it replaces.' }),
  timeStamp: z
    .strictObject({ isThere: z.boolean(), because: z.string().meta({ description: 'Why there is none.' }) })
    .meta({ description: 'Trusted time stamp (RFC 3161) in the folder `time-stamp`.' }),
  edition: z.string().meta({ description: '`team`, or the fabricator whose edition this is.' }),
})

export const artworkIndexSchema = z.strictObject({
  files: z.array(
    z.strictObject({
      path: z.string(),
      fileName: z.string().meta({ description: 'As uploaded.' }),
      sha256: sha256Schema,
      sizeBytes: z.int().nonnegative(),
    }),
  ),
})

import { z } from 'zod'
import type { Done } from '@/lib/review'

/** Parts that several files of a package are made of. */
export const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/)

/** ISO 8601 in UTC. */
export const timeSchema = z.iso.datetime()
export const daySchema = z.iso.date()

/** A person's identifier and name are text of the installation that wrote the package. */
export const idSchema = z.string()

export const namedFileSchema = z.strictObject({ fileName: z.string(), sha256: sha256Schema })

export const doneSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('fields'), changes: z.array(z.string()) }),
  z.strictObject({ kind: z.literal('proposal'), id: idSchema, title: z.string() }),
  z.strictObject({ kind: z.literal('file'), fileName: z.string(), sha256: sha256Schema }),
  z.strictObject({ kind: z.literal('action'), id: idSchema, text: z.string() }),
  z.strictObject({ kind: z.literal('no-change') }),
]) satisfies z.ZodType<Done>

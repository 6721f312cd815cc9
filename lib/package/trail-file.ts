import { z } from 'zod'
import type { Issue, Result } from '@/lib/engine'
import type { TrailRecord } from '@/lib/review'
import { checkpointSchema, type TrailCheckpoint } from './checkpoints'

export const TRAIL_FORMAT = 'bendworthy-trail'

const recordSchema = z.strictObject({
  sequence: z.int().positive(),
  at: z.string(),
  actor: z.strictObject({ userId: z.string().nullable(), name: z.string() }),
  action: z.string(),
  subject: z.strictObject({
    kind: z.string(),
    id: z.string(),
    projectId: z.string().nullable(),
    revisionId: z.string().nullable(),
    companyId: z.string().nullable(),
  }),
  details: z.record(z.string(), z.json()),
  previousHash: z.string(),
  hash: z.string(),
})

export const trailFileSchema = z.strictObject({
  format: z.literal(TRAIL_FORMAT),
  formatVersion: z.literal(1),
  /** Part of a longer trail: sequence numbers have gaps. */
  isExtract: z.boolean(),
  records: z.array(recordSchema),
  checkpoints: z.array(checkpointSchema).default([]),
})

export interface TrailFile {
  readonly format: typeof TRAIL_FORMAT
  readonly formatVersion: 1
  readonly isExtract: boolean
  readonly records: readonly TrailRecord[]
  /** Signed with the installation's key; a package's and an export's tell later whether the trail was cut off. */
  readonly checkpoints: readonly TrailCheckpoint[]
}

export function makeTrailFile(
  records: readonly TrailRecord[],
  isExtract: boolean,
  checkpoints: readonly TrailCheckpoint[] = [],
): TrailFile {
  return { format: TRAIL_FORMAT, formatVersion: 1, isExtract, records, checkpoints }
}

/** Reads a trail as exported; issues name the record and the field. */
export function parseTrailFile(text: string): Result<TrailFile> {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch (error) {
    const message = `the trail is not JSON: ${error instanceof Error ? error.message : String(error)}`
    return { ok: false, issues: [{ code: 'not-json', path: [], message }] }
  }
  const parsed = trailFileSchema.safeParse(value)
  if (parsed.success) return { ok: true, value: parsed.data }
  const issues: Issue[] = parsed.error.issues.slice(0, 20).map((issue) => ({
    code: 'malformed',
    path: issue.path.map((key) => (typeof key === 'symbol' ? String(key) : key)),
    message: issue.message,
  }))
  return { ok: false, issues }
}

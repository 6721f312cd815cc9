import { readdirSync, readFileSync } from 'node:fs'
import { gunzipSync } from 'node:zlib'
import { z } from 'zod'

/**
 * Documents as the program stored them, one folder for each format of the design: made by playing the demo scenario with the program of
 * that time, and never made again. See `test/fixtures/README.md`.
 */
const FOLDER = 'test/fixtures/kept'

export const KEPT_FORMATS: readonly number[] = readdirSync(FOLDER)
  .map((name) => Number(/^format-(\d+)$/.exec(name)?.[1]))
  .sort((a, b) => a - b)

const read = (format: number, name: string) => gunzipSync(readFileSync(`${FOLDER}/format-${format}/${name}.gz`))

const revisionSchema = z.object({
  designHash: z.string(),
  designJson: z.string(),
  engineVersion: z.string(),
  resultsJson: z.string(),
  signatures: z.array(
    z.object({ contentHash: z.string(), contentJson: z.string(), changesJson: z.string().nullable() }),
  ),
})

export type KeptRevision = z.infer<typeof revisionSchema>

export const KEPT_REVISIONS = ['pipit-rev-a', 'skua-rev-a'] as const

/** Columns of one revision, its newest calculation and its signatures, as they stood in the database. */
export function readKeptRevision(format: number, name: (typeof KEPT_REVISIONS)[number]): KeptRevision {
  return revisionSchema.parse(JSON.parse(read(format, `${name}.revision.json`).toString('utf8')))
}

const proposalSchema = z.object({ baseHash: z.string(), baseJson: z.string(), patchJson: z.string() })

/** A proposal's patch, and the design that it was made on. */
export function readKeptProposal(format: number): z.infer<typeof proposalSchema> {
  return proposalSchema.parse(JSON.parse(read(format, 'proposal.json').toString('utf8')))
}

/** The released package of Pipit, the team's edition, byte for byte. */
export function readKeptPackage(format: number): Uint8Array {
  return new Uint8Array(read(format, 'package.zip'))
}

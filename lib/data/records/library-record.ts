import 'server-only'
import { z } from 'zod'
import { makeBlankDesign, parseStoredJson, readOnce, readStoredDesignDocument } from '@/lib/engine'
import type { Design, Material } from '@/lib/engine/design'
import type { TransactionClient } from '../store/client'

export const LIBRARY_KINDS = ['material', 'construction'] as const
export type LibraryKind = (typeof LIBRARY_KINDS)[number]

/**
 * What one version holds. Either kind lies in a design document, a material in an otherwise blank one, so that it is lifted with the format
 * of designs.
 */
const storedEntrySchema = z.strictObject({
  name: z.string(),
  /** Of a construction: when one would choose it. */
  purpose: z.string(),
  design: z.unknown(),
  /** Of a construction: whose work it is; they stay authors where somebody begins with it. */
  authorIds: z.array(z.string()).readonly(),
  /** Of a construction: the revision that it was taken from. */
  from: z.strictObject({ revisionId: z.string(), label: z.string(), designHash: z.string() }).nullable(),
})

export interface LibraryContent extends Omit<z.infer<typeof storedEntrySchema>, 'design'> {
  readonly design: Design
}

export interface LibraryRecord {
  readonly kind: LibraryKind
  readonly entryId: string
  readonly version: number
  readonly isWithdrawn: boolean
  readonly content: LibraryContent
  readonly reason: string
  readonly changedById: string
  readonly changedAt: Date
}

const readContent: (contentJson: string) => LibraryContent = readOnce((contentJson) => {
  const stored = storedEntrySchema.parse(parseStoredJson('an entry of the library', contentJson))
  return { ...stored, design: readStoredDesignDocument(stored.design) }
})

export const writeLibraryContent = (content: LibraryContent): string => JSON.stringify(content)

export function makeMaterialContent(material: Material): LibraryContent {
  const design = { ...makeBlankDesign(material.name), materials: [material] }
  return { name: material.name, purpose: '', design, authorIds: [], from: null }
}

/** The material that an entry of that kind holds. */
export function getMaterial({ content, entryId }: LibraryRecord): Material {
  const [material] = content.design.materials
  if (material === undefined) throw new Error(`the entry "${entryId}" of the library holds no material`)
  return material
}

/** The newest version of each entry of a kind that is still offered, by name. */
export async function listOffered(tx: TransactionClient, kind: LibraryKind): Promise<readonly LibraryRecord[]> {
  const rows = await tx.libraryEntry.findMany({ where: { kind }, orderBy: [{ entryId: 'asc' }, { version: 'desc' }] })
  return rows
    .filter((row, at) => row.entryId !== rows[at - 1]?.entryId && !row.isWithdrawn)
    .map(toRecord)
    .sort((a, b) => compareNames(a.content.name, b.content.name))
}

const compareNames = (a: string, b: string) => a.localeCompare(b, 'en') || (a < b ? -1 : 1)

/** The newest version of one entry, withdrawn or not; null where there is none of that id. */
export async function findLibraryEntry(tx: TransactionClient, entryId: string): Promise<LibraryRecord | null> {
  const row = await tx.libraryEntry.findFirst({ where: { entryId }, orderBy: { version: 'desc' } })
  return row === null ? null : toRecord(row)
}

interface LibraryRow extends Omit<LibraryRecord, 'kind' | 'content'> {
  readonly kind: string
  readonly contentJson: string
}

function toRecord({ kind, contentJson, ...row }: LibraryRow): LibraryRecord {
  const known = LIBRARY_KINDS.find((each) => each === kind)
  if (known === undefined) throw new Error(`the library holds an entry of the kind "${kind}"`)
  return { ...row, kind: known, content: readContent(contentJson) }
}

import 'server-only'
import { CARRIED_VERSION, listAuthors } from '../records/authors'
import { type CheckedDesign, stampDesign } from '../records/design-input'
import { loadRevisionRecord } from '../records/revision-record'
import type { WriteContext } from './write'

/** Authors of what is copied stay its authors: otherwise a copy would make its maker independent of their own work. */
export async function carryAuthorsOver(context: WriteContext, fromId: string, toId: string): Promise<void> {
  const source = await loadRevisionRecord(context.tx, fromId)
  for (const { userId, parts } of listAuthors(source)) {
    for (const part of parts) {
      await carry(context, toId, { userId, part, why: `taken over with the copy of revision ${source.label}` })
    }
  }
}

/**
 * A design that went out as a file and comes in again was made by the authors of the revision of this project that holds it, whatever its label.
 * One that somebody changed on the way is theirs: nothing here could tell.
 */
export async function carryImportedAuthors(
  context: WriteContext,
  { projectId, revisionId, checked }: { projectId: string; revisionId: string; checked: CheckedDesign },
): Promise<void> {
  const others = await context.tx.revision.findMany({
    where: { projectId, id: { not: revisionId } },
    select: { id: true, label: true, designHash: true },
    orderBy: { createdAt: 'asc' },
  })
  const carried = new Set<string>()
  for (const { id, label, designHash } of others) {
    if (stampDesign(checked, label).designHash !== designHash) continue
    for (const { userId, parts } of listAuthors(await loadRevisionRecord(context.tx, id))) {
      if (!parts.includes('design') || carried.has(userId)) continue
      carried.add(userId)
      await carry(context, revisionId, {
        userId,
        part: 'design',
        why: `the imported design is that of revision ${label}`,
      })
    }
  }
}

/** Who made what was taken from elsewhere; the other parts of their work stayed behind. */
export async function carryTakenAuthors(
  context: WriteContext,
  revisionId: string,
  authorIds: readonly string[],
  why: string,
): Promise<void> {
  for (const userId of authorIds) await carry(context, revisionId, { userId, part: 'design', why })
}

function carry(
  { tx, at }: WriteContext,
  revisionId: string,
  { userId, part, why }: { userId: string; part: string; why: string },
) {
  const summaryJson = JSON.stringify([why])
  return tx.edit.create({
    data: { revisionId, userId, companyId: null, part, version: CARRIED_VERSION, summaryJson, at },
  })
}

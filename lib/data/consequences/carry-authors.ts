import 'server-only'
import { CARRIED_VERSION, listAuthors } from '../records/authors'
import { loadRevisionRecord } from '../records/revision-record'
import type { WriteContext } from './write'

/** Authors of what is copied stay its authors: otherwise a copy would make its maker independent of their own work. */
export async function carryAuthorsOver({ tx, at }: WriteContext, fromId: string, toId: string): Promise<void> {
  const source = await loadRevisionRecord(tx, fromId)
  for (const { userId, parts } of listAuthors(source)) {
    for (const part of parts) {
      await tx.edit.create({
        data: {
          revisionId: toId,
          userId,
          companyId: null,
          part,
          version: CARRIED_VERSION,
          summaryJson: JSON.stringify([`taken over with the copy of revision ${source.label}`]),
          at,
        },
      })
    }
  }
}

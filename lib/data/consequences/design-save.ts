import 'server-only'
import { compareDesigns } from '@/lib/review'
import { listDesignChangesSince } from '../records/changes-since'
import { type CheckedDesign, stampDesign } from '../records/design-input'
import type { LoadedRevision } from '../records/loaded-revision'
import { refuseStale } from '../store/errors'
import { changeContent } from './changed-content'
import type { WriteContext } from './write'

/** The trail keeps the first changes of a save in words; the hash stands for all of them. */
export const MAX_CHANGES_IN_WORDS = 40

export interface SavedDesign {
  readonly version: number
  readonly designVersion: number
  readonly voidedSignatures: number
}

/** @param seenVersion  the design's version that the person saw */
export function requireDesignSeen(stored: LoadedRevision, seenVersion: number): void {
  if (stored.record.designVersion === seenVersion) return
  const changes = listDesignChangesSince(stored, seenVersion)
  refuseStale(seenVersion, stored.record.designVersion, changes, 'the design')
}

/**
 * Puts a checked design in the place of the stored one, with all that follows from it. A design that is the same as the
 * stored one changes nothing.
 *
 * @param also  what belongs to the same change, written with it
 */
export async function replaceDesign(
  context: WriteContext,
  stored: LoadedRevision,
  given: CheckedDesign,
  action: 'design-saved' | 'design-imported',
  also?: (designVersion: number) => Promise<void>,
): Promise<SavedDesign> {
  const { tx, record } = context
  const revision = stored.record
  const checked = stampDesign(given, revision.label)
  if (revision.designHash === checked.designHash) {
    return { version: revision.version, designVersion: revision.designVersion, voidedSignatures: 0 }
  }
  const summary = compareDesigns(stored.design, checked.design).map(({ sentence }) => sentence)
  const designVersion = revision.designVersion + 1
  const { version, voidedSignatures } = await changeContent(context, stored, { part: 'design', summary }, async () => {
    await tx.revision.update({
      where: { id: revision.id },
      data: { designJson: checked.designJson, designHash: checked.designHash, designVersion },
    })
    await record({
      action,
      subject: { kind: 'revision', id: revision.id },
      projectId: revision.projectId,
      revisionId: revision.id,
      details: {
        designVersion,
        designHash: checked.designHash,
        changeCount: summary.length,
        changes: summary.slice(0, MAX_CHANGES_IN_WORDS),
      },
    })
    await also?.(designVersion)
  })
  return { version, designVersion, voidedSignatures }
}

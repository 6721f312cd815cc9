import 'server-only'
import { now } from '@/lib/config'
import { isOpenStage } from '@/lib/review'
import { type PersonRights, type RevisionScope, readStage } from '../records/authorization'
import { recordEvaluation } from '../records/evaluation'
import { type LoadedRevision, loadRevision } from '../records/loaded-revision'
import { appendToTrail } from './trail'
import { hasLiveSignature } from './voided-signatures'
import { inWriteTransaction } from './write'

/** A second look at the same design within the hour is the same look. */
const SAME_LOOK_MS = 3_600_000

/**
 * Notes when a fabricator looked at a revision, and at which design: later results say how long ago that was and what
 * changed since. The first look at each design goes into the trail, and the results that said nobody had looked are made
 * again; results that somebody signed stay as they were signed.
 *
 * @returns what to run after the read; it does nothing for the team, or where the look is already noted
 */
export function recordView(loaded: LoadedRevision, rights: PersonRights, scope: RevisionScope): () => Promise<void> {
  const companyId = scope.fabricatorCompanyId
  const share = loaded.record.shares.find((candidate) => candidate.companyId === companyId)
  if (companyId === null || share === undefined) return async () => {}
  const { designJson, id: revisionId, projectId, designHash } = loaded.record
  const at = now()
  const isNewDesign = share.lookedJson !== designJson
  const isRecent = share.lookedAt !== null && at.getTime() - share.lookedAt.getTime() < SAME_LOOK_MS
  if (!isNewDesign && isRecent) return async () => {}
  return () =>
    inWriteTransaction(async (tx) => {
      const { count } = await tx.revisionShare.updateMany({
        where: { id: share.id, lookedAt: share.lookedAt },
        data: { lookedAt: at, lookedJson: designJson },
      })
      // Somebody of the company was quicker, or the revision is no longer shared.
      if (count === 0 || !isNewDesign) return
      await appendToTrail(tx, now(), rights, {
        action: 'revision-looked-at',
        subject: { kind: 'revision', id: revisionId },
        projectId,
        revisionId,
        companyId,
        details: { designHash },
      })
      const looked = await loadRevision(tx, revisionId)
      if (!isOpenStage(readStage(looked.record.stage)) || hasLiveSignature(looked)) return
      await recordEvaluation(tx, looked, at)
    })
}

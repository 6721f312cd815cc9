import 'server-only'
import { hashJson } from '@/lib/review'
import type { LoadedArtwork } from '../records/artwork-reading'
import { makeBeginning } from '../records/job-record'
import type { LoadedRevision } from '../records/loaded-revision'
import type { WriteContext } from './write'

/** @returns null where there is no file */
export const makeArtworkJobKey = (
  revisionId: string,
  { key, onPlanKey }: Pick<LoadedArtwork, 'key' | 'onPlanKey'>,
): string | null => (key === null ? null : hashJson({ kind: 'artwork', revisionId, artworkKey: key, onPlanKey }))

/** Were these files read, and laid over this plan where there is one? */
export const isArtworkDone = ({ facts, onPlanKey, onPlan }: LoadedArtwork): boolean =>
  facts !== null && (onPlanKey === null || onPlan !== null)

/**
 * Puts a job down that reads the revision's artwork and lays it over the plan, where nobody has done that yet, in the transaction that changed files or plan: so that no
 * crash loses it. What is on its way for files or a plan that are no longer those is stopped.
 *
 * @param isAgain  also where an earlier attempt failed, somebody stopped it, or what was read has no picture yet
 */
export async function putArtworkJob(
  { tx, rights, at }: Pick<WriteContext, 'tx' | 'rights' | 'at'>,
  { record, artwork }: LoadedRevision,
  isAgain = false,
): Promise<void> {
  const revisionId = record.id
  const key = makeArtworkJobKey(revisionId, artwork)
  const others = { kind: 'artwork', revisionId, ...(key === null ? {} : { key: { not: key } }) }
  await tx.job.updateMany({ where: { ...others, state: 'waiting' }, data: { state: 'stopped', finishedAt: at } })
  await tx.job.updateMany({ where: { ...others, state: 'running' }, data: { isStopAsked: true } })
  if (key === null || (isArtworkDone(artwork) && !isAgain)) return
  const asked = {
    kind: 'artwork',
    key,
    askedById: rights.userId,
    revisionId,
    inputJson: JSON.stringify({ revisionId }),
  }
  const existing = await tx.job.findUnique({ where: { key }, select: { state: true } })
  if (existing === null) await tx.job.create({ data: { ...asked, state: 'waiting', createdAt: at } })
  else if (existing.state === 'done' || existing.state === 'stopped' || (isAgain && existing.state === 'failed')) {
    await tx.job.update({
      where: { key },
      data: { ...asked, ...makeBeginning(at), finishedAt: null },
    })
  }
}

import 'server-only'
import { hashJson } from '@/lib/review'
import { makeBeginning } from '../records/job-record'
import type { LoadedRevision } from '../records/loaded-revision'
import type { WriteContext } from './write'

export const makeArtworkJobKey = (revisionId: string, artworkKey: string): string =>
  hashJson({ kind: 'artwork', revisionId, artworkKey })

/**
 * Puts a job down that reads the revision's artwork, where nobody has read these files yet, in the transaction that changed them: so that no
 * crash loses it. What is on its way for files that are no longer those is stopped.
 *
 * @param isAgain  also where an earlier attempt failed, or somebody stopped it
 */
export async function putArtworkJob(
  { tx, rights, at }: Pick<WriteContext, 'tx' | 'rights' | 'at'>,
  { record, artwork }: LoadedRevision,
  isAgain = false,
): Promise<void> {
  const revisionId = record.id
  const key = artwork.key === null ? null : makeArtworkJobKey(revisionId, artwork.key)
  const others = { kind: 'artwork', revisionId, ...(key === null ? {} : { key: { not: key } }) }
  await tx.job.updateMany({ where: { ...others, state: 'waiting' }, data: { state: 'stopped', finishedAt: at } })
  await tx.job.updateMany({ where: { ...others, state: 'running' }, data: { isStopAsked: true } })
  if (key === null || artwork.facts !== null) return
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

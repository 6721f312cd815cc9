import 'server-only'
import { isArtworkDone, makeArtworkJobKey } from '../consequences/artwork-job'
import { findPicture, hasPicture } from '../records/artwork-picture'
import { type Actor, mayOnRevision, requireRevisionInView } from '../records/authorization'
import { loadRevision } from '../records/loaded-revision'
import { NotFoundError } from '../store/errors'
import { readKeptFile } from '../store/file-store'
import type { ArtworkReadingView, FileDownload } from '../views'
import { read } from './read'

const ON_ITS_WAY: readonly ArtworkReadingView['state'][] = ['waiting', 'running', 'failed', 'stopped']

/** What the artwork files of a revision say, or how far reading them is. */
export function getArtworkReading(actor: Actor, revisionId: string): Promise<ArtworkReadingView> {
  return read(actor, async ({ tx, rights }) => {
    const scope = await requireRevisionInView(tx, rights, revisionId)
    const { artwork } = await loadRevision(tx, revisionId)
    const mayEdit = mayOnRevision(rights, 'revision:edit', scope.subject)
    const { facts, onPlan } = artwork
    const isDrawn = artwork.key !== null && (await hasPicture(tx, artwork.key))
    const view = { progress: 0, failure: null, facts, onPlan, mayEdit, hasPicture: isDrawn }
    const key = makeArtworkJobKey(revisionId, artwork)
    if (key === null) return { ...view, state: 'none' }
    if (isArtworkDone(artwork)) return { ...view, state: 'read', progress: 1 }
    const job = await tx.job.findUnique({ where: { key } })
    const state = ON_ITS_WAY.find((known) => known === job?.state)
    return state === undefined || job === null
      ? { ...view, state: 'unread' }
      : { ...view, state, progress: job.progress, failure: job.failure }
  })
}

/**
 * The layers of a revision's artwork as they are looked at: made when the files were read, for people who may fetch the files.
 *
 * @throws NotFoundError also where the files have no picture yet
 */
export async function getArtworkPicture(actor: Actor, revisionId: string): Promise<FileDownload> {
  const sha256 = await read(actor, async ({ tx, rights }) => {
    await requireRevisionInView(tx, rights, revisionId)
    const { artwork } = await loadRevision(tx, revisionId)
    return artwork.key === null ? null : findPicture(tx, artwork.key)
  })
  if (sha256 === null) throw new NotFoundError('picture of the artwork')
  return {
    fileName: 'artwork-picture.bin',
    mediaType: 'application/octet-stream',
    bytes: await readKeptFile(sha256),
  }
}

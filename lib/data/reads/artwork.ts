import 'server-only'
import { isArtworkDone, makeArtworkJobKey } from '../consequences/artwork-job'
import { type Actor, mayOnRevision, requireRevisionInView } from '../records/authorization'
import { loadRevision } from '../records/loaded-revision'
import type { ArtworkReadingView } from '../views'
import { read } from './read'

const ON_ITS_WAY: readonly ArtworkReadingView['state'][] = ['waiting', 'running', 'failed', 'stopped']

/** What the artwork files of a revision say, or how far reading them is. */
export function getArtworkReading(actor: Actor, revisionId: string): Promise<ArtworkReadingView> {
  return read(actor, async ({ tx, rights }) => {
    const scope = await requireRevisionInView(tx, rights, revisionId)
    const { artwork } = await loadRevision(tx, revisionId)
    const mayEdit = mayOnRevision(rights, 'revision:edit', scope.subject)
    const { facts, onPlan } = artwork
    const view = { progress: 0, failure: null, facts, onPlan, mayEdit }
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

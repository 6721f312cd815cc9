import 'server-only'

import { notFound } from 'next/navigation'
import { cache } from 'react'
import { computeOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { paths } from '@/lib/addresses'
import { type Actor, getRevision, type RevisionView } from '@/lib/data'
import { noteOpened, notingRefusal } from '@/lib/server'

export interface LoadedRevision {
  readonly actor: Actor
  readonly revision: RevisionView
}

export interface RevisionParams {
  params: Promise<{ projectId: string; revisionId: string }>
}

/**
 * The revision of this address as the person may see it, read once per request for frame and page together. The
 * project in the address is only a claim: a revision of another project is not found here.
 */
export const loadRevision = cache(async (projectId: string, revisionId: string): Promise<LoadedRevision> => {
  const actor = await requireActor(paths.revision(projectId, revisionId))
  const asked = { place: { projectId, revisionId }, what: paths.revision(projectId, revisionId) }
  const revision = await computeOrNotFound(actor, () =>
    notingRefusal(actor, asked, () => getRevision(actor, revisionId)),
  )
  if (revision.project.id !== projectId) notFound()
  await noteOpened(actor, { revisionId })
  return { actor, revision }
})

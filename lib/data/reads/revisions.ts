import 'server-only'
import { makeResultsDocument } from '@/lib/engine'
import { recordView } from '../consequences/record-view'
import { type Actor, requireRevisionInView } from '../records/authorization'
import { loadDoneBases } from '../records/done-since'
import { findIssueBlockers } from '../records/issued-revision'
import { loadRevision } from '../records/loaded-revision'
import { makeSnapshot } from '../records/snapshot'
import type { FileDownload, RevisionView } from '../views'
import { read } from './read'
import { makeFileName, toRevisionView } from './revision-view'

/**
 * Everything that the screens of a revision show; what the person asking may not see is left out of it. That somebody
 * of a fabricator opened it is noted.
 */
export async function getRevision(actor: Actor, revisionId: string): Promise<RevisionView> {
  const { view, look } = await read(actor, async ({ tx, rights }) => {
    const scope = await requireRevisionInView(tx, rights, revisionId)
    const loaded = await loadRevision(tx, revisionId)
    const bases = await loadDoneBases(tx, loaded.record)
    const view = toRevisionView(loaded, bases, rights, scope)
    const isAsked = view.stage === 'awaiting-signature' && scope.fabricatorCompanyId === null
    const issued = isAsked ? await findIssueBlockers(tx, loaded, rights) : []
    const blocked = {
      ...view,
      blockers: [...issued, ...view.blockers],
      signingBlockers: view.may.sign ? [...issued, ...view.signingBlockers] : view.signingBlockers,
    }
    return { view: blocked, look: recordView(loaded, rights, scope) }
  })
  await look()
  return view
}

/** The design document, as `parseDesignText` reads it. */
export function exportDesign(actor: Actor, revisionId: string): Promise<FileDownload> {
  return read(actor, async ({ tx, rights }) => {
    await requireRevisionInView(tx, rights, revisionId)
    const { record, design } = await loadRevision(tx, revisionId)
    return makeJsonFile(makeFileName([record.project.name, record.label], 'design.json'), design)
  })
}

/** The results as recorded; a fabricator's with its own company's limits. */
export function exportResults(actor: Actor, revisionId: string): Promise<FileDownload> {
  return read(actor, async ({ tx, rights }) => {
    const { fabricatorCompanyId } = await requireRevisionInView(tx, rights, revisionId)
    const loaded = await loadRevision(tx, revisionId)
    const { snapshot } = makeSnapshot(loaded, fabricatorCompanyId)
    const fileName = makeFileName([loaded.record.project.name, loaded.record.label], 'results.json')
    return makeJsonFile(fileName, makeResultsDocument(snapshot.evaluation, snapshot.evaluation?.results ?? null))
  })
}

function makeJsonFile(fileName: string, value: unknown): FileDownload {
  const text = `${JSON.stringify(value, null, 2)}\n`
  return { fileName, mediaType: 'application/json', bytes: new TextEncoder().encode(text) }
}

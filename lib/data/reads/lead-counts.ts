import 'server-only'
import { findBlockers, listItemStates, OPEN_STAGES, type Stage } from '@/lib/review'
import { type Actor, readStage } from '../records/authorization'
import { loadRevisions } from '../records/loaded-revision'
import { makeSnapshot } from '../records/snapshot'
import { read } from './read'

/** Where one open revision of a lead's project stands, in numbers. */
export interface LeadCountView {
  readonly projectId: string
  readonly projectName: string
  readonly revisionId: string
  readonly revisionLabel: string
  readonly stage: Stage
  readonly stageSince: string
  /** Items that nobody has answered, and items that fail or concern and are not waived. */
  readonly openItems: number
  readonly concerns: number
  /** Of the concerns, those that rest on a typed yes or no, and those that a person raised; the others were computed. */
  readonly statedConcerns: number
  readonly judgedConcerns: number
  readonly openQueries: number
  readonly openMustChanges: number
  readonly proposedWaivers: number
  /** Causes that keep it in its stage. */
  readonly blockers: number
}

/** For a lead: every open revision of every project that the person leads; longest at its stage first. */
export function listLeadCounts(actor: Actor): Promise<readonly LeadCountView[]> {
  return read(actor, async ({ tx, rights }) => {
    const projectIds = rights.memberships.filter(({ role }) => role === 'lead').map(({ projectId }) => projectId)
    const rows = await tx.revision.findMany({
      where: { projectId: { in: projectIds }, stage: { in: [...OPEN_STAGES] } },
      select: { id: true, stageSince: true },
      orderBy: [{ stageSince: 'asc' }, { id: 'asc' }],
    })
    const counts: LeadCountView[] = []
    const ids = rows.map(({ id }) => id)
    for (const loaded of await loadRevisions(tx, ids)) {
      const { record } = loaded
      const { snapshot } = makeSnapshot(loaded, null)
      const itemStates = listItemStates(snapshot)
      const isOpen = ({ state }: { state: string }) => state === 'open'
      const threads = snapshot.threads.filter(isOpen)
      counts.push({
        projectId: record.projectId,
        projectName: record.project.name,
        revisionId: record.id,
        revisionLabel: record.label,
        stage: readStage(record.stage),
        stageSince: record.stageSince.toISOString(),
        openItems: itemStates.filter(isOpen).length,
        concerns: itemStates.filter(({ state }) => state === 'concern').length,
        statedConcerns: itemStates.filter(({ state, basis }) => state === 'concern' && basis === 'stated').length,
        judgedConcerns: itemStates.filter(({ state, basis }) => state === 'concern' && basis === 'judgment').length,
        openQueries: threads.filter(({ kind }) => kind === 'engineering-query').length,
        openMustChanges: threads.filter(({ kind }) => kind === 'must-change').length,
        proposedWaivers: snapshot.waivers.filter(({ state }) => state === 'proposed').length,
        blockers: findBlockers(snapshot).length,
      })
    }
    return counts
  })
}

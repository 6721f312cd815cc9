import 'server-only'
import { OPEN_STAGES, type Stage } from '@/lib/review'
import type { Prisma } from '../generated/sqlite/client'
import { type Actor, type PersonRights, readStage } from '../records/authorization'
import type { TransactionClient } from '../store/client'
import { MAX_ROWS_ON_PAGE, type Paged } from './paged'
import { holding } from './standings'
import { readStandings } from './waits'

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

/** For a lead: the open revisions of every project that the person leads; longest at its stage first. */
export function listLeadCounts(actor: Actor, page = 1): Promise<Paged<LeadCountView>> {
  return readStandings(actor, ({ tx, rights }) => findLeadCounts(tx, rights, page))
}

export async function findLeadCounts(
  tx: TransactionClient,
  { userId }: PersonRights,
  page: number,
): Promise<Paged<LeadCountView>> {
  const led: Prisma.RevisionWhereInput = {
    stage: { in: [...OPEN_STAGES] },
    project: { memberships: { some: { userId, role: 'lead' } } },
  }
  const total = await tx.revisionStanding.count({ where: holding(led) })
  if (total === 0) return { rows: [], total }
  const rows = await tx.revisionStanding.findMany({
    where: holding(led),
    include: {
      revision: {
        select: { projectId: true, label: true, stage: true, stageSince: true, project: { select: { name: true } } },
      },
    },
    orderBy: [{ revision: { stageSince: 'asc' } }, { revisionId: 'asc' }],
    skip: (page - 1) * MAX_ROWS_ON_PAGE,
    take: MAX_ROWS_ON_PAGE,
  })
  return { rows: rows.map(toView), total }
}

type Row = Prisma.RevisionStandingGetPayload<{
  include: {
    revision: {
      select: { projectId: true; label: true; stage: true; stageSince: true; project: { select: { name: true } } }
    }
  }
}>

function toView({ revision, revisionId, ...counts }: Row): LeadCountView {
  const { openItems, concerns, statedConcerns, judgedConcerns, openQueries, openMustChanges } = counts
  return {
    projectId: revision.projectId,
    projectName: revision.project.name,
    revisionId,
    revisionLabel: revision.label,
    stage: readStage(revision.stage),
    stageSince: revision.stageSince.toISOString(),
    openItems,
    concerns,
    statedConcerns,
    judgedConcerns,
    openQueries,
    openMustChanges,
    proposedWaivers: counts.proposedWaivers,
    blockers: counts.blockers,
  }
}

import 'server-only'
import { now } from '@/lib/config'
import { EMPTY_TALLY, readStoredDesign, readStoredResults, tallyVerdicts, type VerdictTally } from '@/lib/engine'
import { groupBy } from '@/lib/engine/numerics'
import { CONCERNS_FABRICATORS, OWN_ROLES, PROJECT_ROLES } from '@/lib/review'
import type { Prisma } from '../generated/sqlite/client'
import {
  type Actor,
  getFabricatorCompanyId,
  getMembership,
  mayInProject,
  mayOnRevision,
  type PersonRights,
  readStage,
  requireProject,
} from '../records/authorization'
import { listCompanyIds } from '../records/merged-companies'
import { unpackText } from '../records/packed-text'
import { toCompanyView } from '../records/part-views'
import { readRole } from '../records/stored-words'
import type { TransactionClient } from '../store/client'
import type { ProjectSummary, ProjectView, RevisionSummary, TimelineEntry } from '../views'
import { findFabricators } from './fabricators'
import { toInvitationView } from './invitations'
import { MAX_ROWS_ON_PAGE, type Paged } from './paged'
import { read } from './read'
import { describeRecord } from './trail-words'

/** Entries of a project's timeline; the trail of a revision has them all. */
const TIMELINE_LENGTH = 60

/** The projects of one person, a page of each list. */
export interface ProjectLists {
  readonly open: Paged<ProjectSummary>
  readonly archived: Paged<ProjectSummary>
}

/**
 * Projects that the person is in, by name.
 *
 * @param pages  of each list, from 1; after the last one there are no rows
 */
export function listProjects(
  actor: Actor,
  pages: { readonly open: number; readonly archived: number } = { open: 1, archived: 1 },
): Promise<ProjectLists> {
  return read(actor, async ({ tx, rights }) => {
    // As `project:view` asks, which each row is held against besides: a fabricator's company must have admitted the person.
    const companyIds = rights.companies.map(({ companyId }) => companyId)
    const place: Prisma.MembershipWhereInput = {
      userId: rights.userId,
      OR: [{ role: { in: [...OWN_ROLES] } }, { role: { in: [...PROJECT_ROLES] }, companyId: { in: companyIds } }],
    }
    const ofThem = { memberships: { some: place } }
    const list = async (isArchived: boolean, page: number): Promise<Paged<ProjectSummary>> => {
      const where: Prisma.ProjectWhereInput = { ...ofThem, archivedAt: isArchived ? { not: null } : null }
      const total = await tx.project.count({ where })
      const projects = await tx.project.findMany({
        where,
        orderBy: { nameKey: 'asc' },
        skip: (page - 1) * MAX_ROWS_ON_PAGE,
        take: MAX_ROWS_ON_PAGE,
      })
      return { rows: await summarize(tx, rights, projects), total }
    }
    return { open: await list(false, pages.open), archived: await list(true, pages.archived) }
  })
}

type ProjectRow = Prisma.ProjectGetPayload<object>

async function summarize(
  tx: TransactionClient,
  rights: PersonRights,
  projects: readonly ProjectRow[],
): Promise<ProjectSummary[]> {
  if (projects.length === 0) return []
  const revisions = await tx.revision.findMany({
    where: { projectId: { in: projects.map(({ id }) => id) } },
    select: REVISION_PARTS,
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
  })
  const inView = revisions.filter((candidate) => isInView(rights, candidate))
  const revisionsOf = groupBy(inView, ({ projectId }) => projectId)
  return projects
    .filter(({ id }) => mayInProject(rights, 'project:view', id))
    .map((project): ProjectSummary => {
      const visible = revisionsOf.get(project.id) ?? []
      const latest = visible[0]
      return {
        id: project.id,
        name: project.name,
        description: project.description,
        isArchived: project.archivedAt !== null,
        role: getMembership(rights, project.id)?.role ?? null,
        revisionCount: visible.length,
        latestRevision:
          latest === undefined ? null : { id: latest.id, label: latest.label, stage: readStage(latest.stage) },
      }
    })
}

/** A project with its revisions, people, fabricators and timeline, as far as the person may see them. */
export function getProject(actor: Actor, projectId: string): Promise<ProjectView> {
  return read(actor, async ({ tx, rights }) => {
    const project = await requireProject(tx, rights, projectId)
    const fabricatorCompanyId = getFabricatorCompanyId(rights, project.id)
    const isTeam = fabricatorCompanyId === null
    const mayInvite = mayInProject(rights, 'project:invite', project.id)
    const rows = await tx.revision.findMany({
      where: { projectId: project.id },
      include: REVISION_SUMMARY_PARTS,
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    })
    const members = await tx.membership.findMany({
      where: { projectId: project.id },
      include: { user: true, company: true },
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    })
    const fabricators = await findFabricators(tx, project.id)
    const invitations = mayInvite
      ? await tx.invitation.findMany({
          where: { projectId: project.id, companyRole: null },
          include: { project: true, company: true },
          orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
        })
      : []
    const revisions = rows.filter((row) => isInView(rights, row))
    const isVisible = (companyId: string, kind: string) =>
      isTeam || kind === 'team' || companyId === fabricatorCompanyId
    return {
      id: project.id,
      name: project.name,
      description: project.description,
      role: getMembership(rights, project.id)?.role ?? null,
      revisions: await toRevisionSummaries(tx, revisions, isTeam),
      people: members
        .filter(({ company }) => isVisible(company.id, company.kind))
        .map(({ user, company, role }) => ({
          user: { id: user.id, name: user.name },
          email: isTeam || company.id === fabricatorCompanyId ? user.email : null,
          role: readRole(role),
          company: toCompanyView(company),
        })),
      fabricators: fabricators.filter(({ id, kind }) => isVisible(id, kind)),
      invitations: invitations.map((invitation) => toInvitationView(invitation, now())),
      timeline: await listTimeline(tx, project.id, { revisions, fabricatorCompanyId }),
      archivedAt: project.archivedAt?.toISOString() ?? null,
      may: {
        edit: mayInProject(rights, 'project:edit', project.id),
        invite: mayInvite,
        createRevision: mayInProject(rights, 'revision:create', project.id),
        managePeople: mayInProject(rights, 'project:remove-person', project.id),
        seeTrail: isTeam,
        seeAccess: mayInProject(rights, 'project:view-access', project.id),
      },
    }
  })
}

/** What authorisation asks of a revision in a list. */
const REVISION_PARTS = {
  id: true,
  projectId: true,
  label: true,
  stage: true,
  shares: { select: { companyId: true } },
} as const satisfies Prisma.RevisionSelect

const REVISION_SUMMARY_PARTS = {
  shares: { select: { companyId: true } },
  supersededBy: { select: { label: true } },
  packages: { select: { audience: true } },
  evaluations: { orderBy: { ordinal: 'desc' }, take: 1, select: { resultsJson: true } },
} as const satisfies Prisma.RevisionInclude

type SummaryRow = Prisma.RevisionGetPayload<{ include: typeof REVISION_SUMMARY_PARTS }>

export function isInView(
  rights: PersonRights,
  row: { projectId: string; stage: string; shares: readonly { companyId: string }[] },
): boolean {
  return mayOnRevision(rights, 'revision:view', {
    kind: 'revision',
    projectId: row.projectId,
    stage: readStage(row.stage),
    sharedWithCompanyIds: row.shares.map(({ companyId }) => companyId),
    // Plays no part in who may see a revision.
    hasLiveSignature: false,
  })
}

async function toRevisionSummaries(
  tx: TransactionClient,
  rows: readonly SummaryRow[],
  isTeam: boolean,
): Promise<RevisionSummary[]> {
  const userIds = [...new Set(rows.map(({ createdById }) => createdById))]
  const users = await tx.user.findMany({ where: { id: { in: userIds } }, select: { id: true, name: true } })
  const names = new Map(users.map(({ id, name }) => [id, name]))
  return rows.map((row) => ({
    id: row.id,
    projectId: row.projectId,
    label: row.label,
    stage: readStage(row.stage),
    stageSince: row.stageSince.toISOString(),
    createdAt: row.createdAt.toISOString(),
    createdBy: { id: row.createdById, name: names.get(row.createdById) ?? 'somebody' },
    designName: readStoredDesign(row.designJson).name,
    // The recorded results use every fabricator's limits; one of them must not read the others' out of the counts.
    verdictCounts: isTeam ? countVerdicts(row.evaluations[0]?.resultsJson) : EMPTY_TALLY,
    supersededByLabel: row.supersededBy?.label ?? null,
    hasPackage: row.packages.length > 0,
  }))
}

function countVerdicts(resultsJson: string | undefined): VerdictTally {
  return resultsJson === undefined ? EMPTY_TALLY : tallyVerdicts(readStoredResults(unpackText(resultsJson)).items)
}

/** What happened in the project, newest first. A fabricator sees what befell the revisions shared with them. */
async function listTimeline(
  tx: TransactionClient,
  projectId: string,
  view: { readonly revisions: readonly SummaryRow[]; readonly fabricatorCompanyId: string | null },
): Promise<TimelineEntry[]> {
  const { fabricatorCompanyId } = view
  const ownIds = fabricatorCompanyId === null ? [] : await listCompanyIds(tx, fabricatorCompanyId)
  const forFabricator: Prisma.TrailRecordWhereInput = {
    revisionId: { in: view.revisions.map(({ id }) => id) },
    OR: [{ companyId: { in: [...ownIds] } }, { action: { in: [...CONCERNS_FABRICATORS] }, companyId: null }],
  }
  const rows = await tx.trailRecord.findMany({
    where: { projectId, ...(fabricatorCompanyId === null ? {} : forFabricator) },
    orderBy: { sequence: 'desc' },
    take: TIMELINE_LENGTH,
  })
  const labels = new Map(view.revisions.map(({ id, label }) => [id, label]))
  return rows.map((row) => ({
    at: row.at,
    actorName: row.actorName,
    sentence: describeRecord(row, labels),
    revisionId: row.revisionId,
  }))
}

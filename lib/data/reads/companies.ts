import 'server-only'
import { now } from '@/lib/config'
import type { Sharing } from '@/lib/review'
import { type Actor, isCompanyRole, requireCompany } from '../records/authorization'
import { toCompanyView } from '../records/part-views'
import { readParticipationState } from '../records/participation-record'
import { readSharing } from '../records/sharing-columns'
import type { TransactionClient } from '../store/client'
import type { CompanyPageView, CompanyPersonView, ParticipationView, PersonView } from '../views'
import { toInvitationView } from './invitations'
import { listProbing } from './probing'
import { read } from './read'

/** A fabricator: to its own people with all that they decide, to a project's team as far as it chose to show. */
export function getCompany(actor: Actor, companyId: string): Promise<CompanyPageView> {
  return read(actor, async ({ tx, rights }) => {
    const { company, may } = await requireCompany(tx, rights, companyId, 'company:view')
    const project =
      company.projectId === null ? null : await tx.project.findUnique({ where: { id: company.projectId } })
    return {
      company: toCompanyView(company),
      ofProjectAlone: project?.name ?? null,
      role: rights.companies.find((own) => own.companyId === company.id)?.role ?? null,
      may: {
        viewInside: may('company:view-inside'),
        viewMatrix: may('company:view-matrix'),
        viewShelf: may('company:view-shelf'),
        viewRates: may('company:view-rates'),
        viewAccess: may('company:view-access'),
        admit: may('company:admit'),
        takePart: may('company:take-part'),
        share: may('company:share'),
        editSheets: may('sheet:edit'),
      },
      inside: may('company:view-inside') ? await loadInside(tx, company.id, readSharing(company)) : null,
    }
  })
}

async function loadInside(
  tx: TransactionClient,
  companyId: string,
  defaultSharing: Sharing,
): Promise<NonNullable<CompanyPageView['inside']>> {
  const people = await tx.companyPerson.findMany({
    where: { companyId },
    include: { user: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  const participations = await tx.participation.findMany({
    where: { companyId },
    include: { project: true },
    orderBy: [{ askedAt: 'desc' }, { id: 'asc' }],
  })
  const memberships = await tx.membership.findMany({
    where: { companyId, role: 'fabricator' },
    include: { project: true },
  })
  const invitations = await tx.invitation.findMany({
    where: { companyId, companyRole: { not: null } },
    include: { project: true, company: true },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
  })
  const find = await loadPeople(tx, [
    ...people.map(({ admittedById }) => admittedById),
    ...participations.flatMap((row) => [row.askedById, row.decidedById, row.sharingSetById]),
  ])
  return {
    people: people.flatMap(({ user, role, admittedById, createdAt }): CompanyPersonView[] =>
      isCompanyRole(role)
        ? [
            {
              user: { id: user.id, name: user.name },
              email: user.email,
              role,
              admittedBy: find(admittedById),
              since: createdAt.toISOString(),
              projectNames: memberships.filter(({ userId }) => userId === user.id).map(({ project }) => project.name),
            },
          ]
        : [],
    ),
    participations: participations.map(
      (row): ParticipationView => ({
        projectId: row.projectId,
        projectName: row.project.name,
        state: readParticipationState(row.state),
        askedBy: find(row.askedById),
        askedAt: row.askedAt.toISOString(),
        askedFor: row.askedFor,
        decidedBy: find(row.decidedById),
        decidedAt: row.decidedAt?.toISOString() ?? null,
        sharing: readSharing(row),
        sharingSetBy: find(row.sharingSetById),
        sharingSetAt: row.sharingSetAt?.toISOString() ?? null,
        version: row.version,
        userIds: memberships.filter(({ projectId }) => projectId === row.projectId).map(({ userId }) => userId),
      }),
    ),
    defaultSharing,
    probing: await listProbing(tx, companyId),
    invitations: invitations.map((invitation) => toInvitationView(invitation, now())),
  }
}

async function loadPeople(
  tx: TransactionClient,
  ids: readonly (string | null)[],
): Promise<(id: string | null) => PersonView | null> {
  const users = await tx.user.findMany({
    where: { id: { in: ids.filter((id) => id !== null) } },
    select: { id: true, name: true },
  })
  const names = new Map(users.map(({ id, name }) => [id, name]))
  return (id) => (id === null ? null : { id, name: names.get(id) ?? 'somebody' })
}

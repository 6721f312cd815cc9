import 'server-only'
import { now } from '@/lib/config'
import type { CompanyRoleInput, RemoveCompanyPersonInput } from '@/lib/inputs'
import type { Sharing } from '@/lib/review'
import { type Actor, isCompanyRole, requireCompany } from './authorization'
import type { TransactionClient } from './client'
import { NotFoundError, refuseClash } from './errors'
import { toInvitationView } from './invitations'
import { toCompanyView } from './part-views'
import { readParticipationState } from './participation-record'
import { listProbing } from './probing'
import { read } from './read'
import { readSharing } from './sharing-columns'
import type { CompanyPageView, CompanyPersonView, Outcome, ParticipationView, PersonView } from './views'
import { write } from './write'

/** A fabricator: to its own people with all that they decide, to a project's team as far as it chose to show. */
export function getCompany(actor: Actor, companyId: string): Promise<CompanyPageView> {
  return read(actor, async ({ tx, standing }) => {
    const { company, may } = await requireCompany(tx, standing, companyId, 'company:view')
    const project =
      company.projectId === null ? null : await tx.project.findUnique({ where: { id: company.projectId } })
    return {
      company: toCompanyView(company),
      ofProjectAlone: project?.name ?? null,
      role: standing.companies.find((own) => own.companyId === company.id)?.role ?? null,
      may: {
        viewInside: may('company:view-inside'),
        viewMatrix: may('company:view-matrix'),
        viewShelf: may('company:view-shelf'),
        viewRates: may('company:view-rates'),
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

/** Says what one of the company's people is in it: also how an admin of the workspace names the first administrator. */
export function setCompanyRole(actor: Actor, input: CompanyRoleInput): Promise<Outcome<null>> {
  return write(actor, 'set-company-role', input, async ({ tx, standing, record }) => {
    const { company } = await requireCompany(tx, standing, input.companyId, 'company:admit')
    const person = await requirePerson(tx, input)
    if (person.role === input.role) return null
    await requireAnotherAdministrator(tx, person)
    await tx.companyPerson.update({ where: { id: person.id }, data: { role: input.role } })
    await record({
      action: 'company-role-changed',
      subject: { kind: 'account', id: person.userId },
      companyId: company.id,
      details: { company: company.name, person: person.user.name, role: input.role, before: person.role },
    })
    return null
  })
}

/** Takes somebody out of the company, and with that out of every project where they are for it. */
export function removeCompanyPerson(actor: Actor, input: RemoveCompanyPersonInput): Promise<Outcome<null>> {
  return write(actor, 'remove-company-person', input, async ({ tx, standing, record }) => {
    const { company } = await requireCompany(tx, standing, input.companyId, 'company:admit')
    const person = await requirePerson(tx, input)
    await requireAnotherAdministrator(tx, person)
    await tx.membership.deleteMany({ where: { userId: person.userId, companyId: company.id, role: 'fabricator' } })
    await tx.companyPerson.delete({ where: { id: person.id } })
    await record({
      action: 'company-person-removed',
      subject: { kind: 'account', id: person.userId },
      companyId: company.id,
      details: { company: company.name, person: person.user.name, role: person.role },
    })
    return null
  })
}

async function requirePerson(tx: TransactionClient, { companyId, userId }: { companyId: string; userId: string }) {
  const person = await tx.companyPerson.findUnique({
    where: { companyId_userId: { companyId, userId } },
    include: { user: { select: { name: true } } },
  })
  if (person === null) throw new NotFoundError('person of this company')
  return person
}

/** Without one nobody could admit people, agree to a project or take anything back. */
async function requireAnotherAdministrator(
  tx: TransactionClient,
  { id, companyId, role }: { readonly id: string; readonly companyId: string; readonly role: string },
): Promise<void> {
  if (role !== 'administrator') return
  const others = await tx.companyPerson.count({
    where: { companyId, role: 'administrator', id: { not: id }, user: { disabledAt: null } },
  })
  if (others === 0) refuseClash('This is the last administrator of the company. Make somebody else one first.')
}

import 'server-only'
import { isAllowed } from '@/lib/review'
import { type Actor, isCompanyRole, loadCompanySubjects, requireInWorkspace } from '../records/authorization'
import { toCompanyView } from '../records/part-views'
import { readParticipationState } from '../records/participation-record'
import type { CompanyView, ListedCompanyView, OwnCompanyView } from '../views'
import { read } from './read'

/** Every fabricator, those of one project alone first, with its people: for an admin, who sees none of its sheets. */
export function listAllCompanies(actor: Actor): Promise<readonly ListedCompanyView[]> {
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'company:confirm')
    const rows = await tx.company.findMany({
      where: { kind: 'fabricator', mergedIntoId: null },
      include: {
        people: { include: { user: true }, orderBy: { createdAt: 'asc' } },
        participations: { include: { project: true }, orderBy: { askedAt: 'asc' } },
      },
      orderBy: [{ nameKey: 'asc' }, { id: 'asc' }],
    })
    const listed = rows.map(
      (row): ListedCompanyView => ({
        company: toCompanyView(row),
        project: row.projectId === null ? null : findProject(row),
        people: row.people.flatMap(({ user, role }) =>
          isCompanyRole(role) ? [{ user: { id: user.id, name: user.name }, email: user.email, role }] : [],
        ),
        participations: row.participations.map(({ project, state }) => ({
          projectName: project.name,
          state: readParticipationState(state),
        })),
      }),
    )
    return [...listed.filter(({ project }) => project !== null), ...listed.filter(({ project }) => project === null)]
  })
}

function findProject(row: {
  readonly projectId: string | null
  readonly participations: readonly { readonly project: { readonly id: string; readonly name: string } }[]
}) {
  const project = row.participations.find((part) => part.project.id === row.projectId)?.project
  return project === undefined ? null : { id: project.id, name: project.name }
}

/** Fabricators whose pages the person may open: their own, and those that take part in a project of their team. */
export function listCompanies(actor: Actor): Promise<readonly CompanyView[]> {
  return read(actor, async ({ tx, rights }) => {
    const ownIds = rights.companies.map(({ companyId }) => companyId)
    const projectIds = rights.memberships.map(({ projectId }) => projectId)
    const companies = await tx.company.findMany({
      where: {
        kind: 'fabricator',
        OR: [{ id: { in: ownIds } }, { participations: { some: { projectId: { in: projectIds } } } }],
      },
      orderBy: [{ nameKey: 'asc' }, { id: 'asc' }],
    })
    const subjects = await loadCompanySubjects(
      tx,
      companies.map(({ id }) => id),
    )
    return companies
      .filter(({ id }) => {
        const subject = subjects.get(id)
        return subject !== undefined && isAllowed(rights, 'company:view', subject)
      })
      .map(toCompanyView)
  })
}

/** The person's own companies by name, each with the projects that await an answer which the person may give. */
export function listOwnCompanies(actor: Actor): Promise<readonly OwnCompanyView[]> {
  // Most people are of no company: nothing is read for them.
  if (actor.companies.length === 0) return Promise.resolve([])
  return read(actor, async ({ tx, rights }) => {
    const rows = await tx.company.findMany({
      where: { id: { in: rights.companies.map(({ companyId }) => companyId) } },
      include: { participations: { where: { state: 'asked' }, select: { id: true } } },
      orderBy: [{ nameKey: 'asc' }, { id: 'asc' }],
    })
    return rows.map((row) => ({
      company: toCompanyView(row),
      requestCount: rights.companies.some(({ companyId, role }) => companyId === row.id && role === 'administrator')
        ? row.participations.length
        : 0,
    }))
  })
}

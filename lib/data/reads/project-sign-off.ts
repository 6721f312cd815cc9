import 'server-only'
import { listPolicyRows } from '@/lib/review'
import {
  type Actor,
  getFabricatorCompanyId,
  mayInProject,
  requireInWorkspace,
  requireProject,
} from '../records/authorization'
import { requireForCapacities } from '../records/capacity-record'
import { loadWorkspace } from '../records/settings-record'
import { readProjectPolicy } from '../records/sign-off-policy-record'
import type { CapacitiesView, CapacityProjectView, ProjectSignOffPolicyView } from '../views'
import { read } from './read'

/** What a project asks of its sign-off; for a lead to change. */
export function getProjectSignOffPolicy(actor: Actor, projectId: string): Promise<ProjectSignOffPolicyView> {
  return read(actor, async ({ tx, rights }) => {
    const { id, name } = await requireProject(tx, rights, projectId)
    const project = await tx.project.findUniqueOrThrow({ where: { id } })
    const { version, rules } = readProjectPolicy(project, (await loadWorkspace(tx)).settings)
    return {
      projectId: id,
      projectName: name,
      version,
      rules,
      rows: listPolicyRows(rules),
      mayEdit: mayInProject(rights, 'policy:edit', id),
    }
  })
}

/** Projects with how many capacities are granted in each. For an admin, who may grant where a project has one lead. */
export function listCapacityProjects(actor: Actor): Promise<readonly CapacityProjectView[]> {
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'workspace:view')
    const projects = await tx.project.findMany({
      select: { id: true, name: true, _count: { select: { capacityGrants: { where: { withdrawnAt: null } } } } },
      orderBy: { name: 'asc' },
    })
    return projects.map(({ id, name, _count }) => ({ id, name, capacityCount: _count.capacityGrants }))
  })
}

/** In what capacity people may sign in a project, withdrawn ones included. For the project's own company, and an admin. */
export function getCapacities(actor: Actor, projectId: string): Promise<CapacitiesView> {
  return read(actor, async ({ tx, rights }) => {
    const mayGrant = mayInProject(rights, 'capacity:grant', projectId)
    const isOwn = getFabricatorCompanyId(rights, projectId) === null
    const project =
      mayGrant || !isOwn
        ? await requireForCapacities(tx, rights, projectId)
        : await requireProject(tx, rights, projectId)
    const grants = await tx.capacityGrant.findMany({
      where: { projectId: project.id },
      orderBy: [{ grantedAt: 'asc' }, { id: 'asc' }],
    })
    const members = await tx.membership.findMany({
      where: { projectId: project.id, role: { in: ['lead', 'member', 'quality'] }, user: { disabledAt: null } },
      include: { user: { select: { id: true, name: true } } },
      orderBy: { createdAt: 'asc' },
    })
    const ids = [...new Set(grants.flatMap(({ userId, grantedById }) => [userId, grantedById]))]
    const users = await tx.user.findMany({ where: { id: { in: ids } }, select: { id: true, name: true } })
    const names = new Map(users.map(({ id, name }) => [id, name]))
    return {
      projectId: project.id,
      projectName: project.name,
      capacities: grants.map((grant) => ({
        id: grant.id,
        userId: grant.userId,
        name: names.get(grant.userId) ?? 'somebody',
        capacity: grant.capacity,
        statement: grant.statement,
        grantedByName: names.get(grant.grantedById) ?? 'somebody',
        grantedAt: grant.grantedAt.toISOString(),
        withdrawnAt: grant.withdrawnAt?.toISOString() ?? null,
        withdrawReason: grant.withdrawReason,
      })),
      mayGrant,
      people: (mayGrant ? members : []).map(({ user }) => ({ userId: user.id, name: user.name })),
    }
  })
}

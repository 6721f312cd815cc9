import 'server-only'
import { describeAct } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import { NotAllowedError, NotFoundError } from '../store/errors'
import { mayInProject, type PersonRights } from './authorization'

/** A project for those who grant capacities in it: a lead, or an admin, who sees nothing else of it. */
export async function requireForCapacities(tx: TransactionClient, rights: PersonRights, projectId: string) {
  const project = await tx.project.findUnique({ where: { id: projectId }, select: { id: true, name: true } })
  const mayGrant = mayInProject(rights, 'capacity:grant', projectId)
  if (project === null || (!mayGrant && !mayInProject(rights, 'project:view', projectId))) {
    throw new NotFoundError('project')
  }
  if (!mayGrant) throw new NotAllowedError(describeAct('capacity:grant'))
  return project
}

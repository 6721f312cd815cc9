import 'server-only'
import type { MembershipRoleInput, RemoveMemberInput } from '@/lib/inputs'
import { write } from '../../consequences/write'
import { type Actor, type PersonRights, requireProject } from '../../records/authorization'
import type { TransactionClient } from '../../store/client'
import { NotFoundError, refuseClash, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'

/** Makes somebody of the team a member, a lead or an observer. A fabricator's role never changes: it binds the company. */
export function setMembershipRole(actor: Actor, input: MembershipRoleInput): Promise<ActResult<null>> {
  return write(actor, 'set-membership-role', input, async ({ tx, rights, record }) => {
    const membership = await requireMember(tx, rights, input)
    if (membership.role === 'fabricator')
      refuseField('userId', 'fabricator', 'belongs to a fabricator: the role cannot be changed')
    if (membership.role === input.role) return null
    await requireAnotherLead(tx, membership)
    await tx.membership.update({ where: { id: membership.id }, data: { role: input.role } })
    await record({
      action: 'role-changed',
      subject: { kind: 'account', id: membership.userId },
      projectId: membership.projectId,
      details: { person: membership.user.name, role: input.role, before: membership.role },
    })
    return null
  })
}

/** Takes somebody out of the project. What they wrote and signed stays. */
export function removeMember(actor: Actor, input: RemoveMemberInput): Promise<ActResult<null>> {
  return write(actor, 'remove-member', input, async ({ tx, rights, record }) => {
    const membership = await requireMember(tx, rights, input)
    await requireAnotherLead(tx, membership)
    await tx.membership.delete({ where: { id: membership.id } })
    await record({
      action: 'person-removed',
      subject: { kind: 'account', id: membership.userId },
      projectId: membership.projectId,
      companyId: membership.role === 'fabricator' ? membership.companyId : null,
      details: { person: membership.user.name, role: membership.role },
    })
    return null
  })
}

async function requireMember(
  tx: TransactionClient,
  rights: PersonRights,
  { projectId, userId }: { projectId: string; userId: string },
) {
  const project = await requireProject(tx, rights, projectId, 'project:remove-person')
  const membership = await tx.membership.findUnique({
    where: { userId_projectId: { userId, projectId: project.id } },
    include: { user: { select: { name: true } } },
  })
  if (membership === null) throw new NotFoundError('person of this project')
  return membership
}

/** A project without a lead could never be signed or released, nor get a lead again. */
async function requireAnotherLead(tx: TransactionClient, membership: { role: string; projectId: string; id: string }) {
  if (membership.role !== 'lead') return
  const others = await tx.membership.count({
    where: { projectId: membership.projectId, role: 'lead', id: { not: membership.id }, user: { disabledAt: null } },
  })
  if (others === 0) refuseClash('This is the last lead of the project. Make somebody else a lead first.')
}

import 'server-only'
import type { GrantCapacityInput, WithdrawCapacityInput } from '@/lib/inputs'
import { isAllowed } from '@/lib/review'
import { write } from '../../consequences/write'
import { type Actor, mayInProject, type PersonRights } from '../../records/authorization'
import { requireForCapacities } from '../../records/capacity-record'
import type { TransactionClient } from '../../store/client'
import { NotFoundError, refuseClash, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'

/**
 * Says in what capacity somebody of the company may sign in a project, and what they answer for in it. Nobody grants it to
 * themselves, unless there is nobody else who could: then the signature names them as the one who granted it.
 */
export function grantCapacity(actor: Actor, input: GrantCapacityInput): Promise<ActResult<{ grantId: string }>> {
  return write(actor, 'grant-capacity', input, async ({ tx, rights, at, record }) => {
    const project = await requireForCapacities(tx, rights, input.projectId)
    const membership = await tx.membership.findUnique({
      where: { userId_projectId: { userId: input.userId, projectId: project.id } },
      include: { user: { select: { name: true, disabledAt: true } } },
    })
    if (membership === null || membership.user.disabledAt !== null) {
      refuseField('userId', 'unknown', 'is not in this project')
    }
    if (!maySignInRole(membership.role, project.id)) {
      refuseField('userId', 'role', `is ${membership.role} of this project; only a lead, a member or quality can sign`)
    }
    if (input.userId === rights.userId && (await hasAnotherGranter(tx, rights, project.id))) {
      refuseField('userId', 'own', 'is you: another lead or an admin must grant it')
    }
    const present = await tx.capacityGrant.findMany({
      where: { projectId: project.id, userId: input.userId, withdrawnAt: null },
      select: { capacity: true },
    })
    if (present.some(({ capacity }) => capacity.toLowerCase() === input.capacity.toLowerCase())) {
      refuseField('capacity', 'taken', `is granted to ${membership.user.name} already`)
    }
    const grant = await tx.capacityGrant.create({
      data: {
        projectId: project.id,
        userId: input.userId,
        capacity: input.capacity,
        statement: input.statement,
        grantedById: rights.userId,
        grantedAt: at,
      },
    })
    await record({
      action: 'capacity-granted',
      subject: { kind: 'capacity', id: grant.id },
      projectId: project.id,
      details: { person: membership.user.name, capacity: input.capacity, statement: input.statement },
    })
    return { grantId: grant.id }
  })
}

/** As the rule of signing has it, for somebody of that role with a capacity. */
function maySignInRole(role: string, projectId: string): boolean {
  return (['lead', 'member', 'quality'] as const).some(
    (known) =>
      known === role &&
      isAllowed(
        { userId: '', isAdmin: false, memberships: [{ projectId, role: known, companyId: '' }], companies: [] },
        'revision:sign',
        {
          kind: 'revision',
          projectId,
          stage: 'awaiting-signature',
          sharedWithCompanyIds: [],
          hasLiveSignature: false,
          hasCapacity: true,
        },
      ),
  )
}

async function hasAnotherGranter(tx: TransactionClient, rights: PersonRights, projectId: string): Promise<boolean> {
  const other = await tx.user.findFirst({
    where: {
      id: { not: rights.userId },
      disabledAt: null,
      OR: [{ isAdmin: true }, { memberships: { some: { projectId, role: 'lead' } } }],
    },
    select: { id: true },
  })
  return other !== null
}

/** Signatures that were given in it stay: they were true when they were given. */
export function withdrawCapacity(actor: Actor, input: WithdrawCapacityInput): Promise<ActResult<null>> {
  return write(actor, 'withdraw-capacity', input, async ({ tx, rights, at, record }) => {
    const grant = await tx.capacityGrant.findUnique({ where: { id: input.grantId } })
    if (grant === null) throw new NotFoundError('capacity')
    if (!mayInProject(rights, 'project:view', grant.projectId) && !rights.isAdmin) throw new NotFoundError('capacity')
    await requireForCapacities(tx, rights, grant.projectId)
    if (grant.withdrawnAt !== null) refuseClash('This capacity was already withdrawn.')
    const person = await tx.user.findUniqueOrThrow({ where: { id: grant.userId }, select: { name: true } })
    await tx.capacityGrant.update({
      where: { id: grant.id },
      data: { withdrawnAt: at, withdrawnById: rights.userId, withdrawReason: input.reason },
    })
    await record({
      action: 'capacity-withdrawn',
      subject: { kind: 'capacity', id: grant.id },
      projectId: grant.projectId,
      details: { person: person.name, capacity: grant.capacity, reason: input.reason },
    })
    return null
  })
}

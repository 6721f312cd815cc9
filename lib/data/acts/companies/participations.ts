import 'server-only'
import type { BringToProjectInput, CompanySharingInput, DecideParticipationInput } from '@/lib/inputs'
import type { Sharing } from '@/lib/review'
import { write } from '../../consequences/write'
import { type Actor, requireCompany } from '../../records/authorization'
import { requireTakesPart } from '../../records/participation-record'
import { readSharing, toSharingColumns } from '../../records/sharing-columns'
import type { TransactionClient } from '../../store/client'
import { NotFoundError, refuseClash, refuseField, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'

/**
 * The company's own decision on a project that asked: to take part, not to, or no longer. Taking part begins with what
 * the company set for further projects, which is nothing until it says otherwise.
 */
export function decideParticipation(actor: Actor, input: DecideParticipationInput): Promise<ActResult<null>> {
  return write(actor, 'decide-participation', input, async ({ tx, rights, at, record }) => {
    const { company } = await requireCompany(tx, rights, input.companyId, 'company:take-part')
    const part = await requirePart(tx, input)
    const { decision } = input
    if (decision === 'end' ? part.state !== 'takes-part' : part.state === 'takes-part') {
      refuseClash(
        decision === 'end'
          ? 'The company does not take part in this project.'
          : 'The company already takes part in this project.',
      )
    }
    const state = STATES[decision]
    await tx.participation.update({
      where: { id: part.id },
      data: {
        state,
        decidedById: rights.userId,
        decidedAt: at,
        ...toSharingColumns(decision === 'take-part' ? readSharing(company) : NOTHING),
        sharingSetById: rights.userId,
        sharingSetAt: at,
        version: { increment: 1 },
      },
    })
    // Anyone who was in the project for the company leaves it with the company.
    if (decision !== 'take-part') {
      await tx.membership.deleteMany({
        where: { projectId: part.projectId, companyId: company.id, role: 'fabricator' },
      })
    }
    await record({
      action: DECISIONS[decision],
      subject: { kind: 'company', id: company.id },
      projectId: part.projectId,
      companyId: company.id,
      details: { company: company.name, reason: input.reason },
    })
    return null
  })
}

const STATES = { 'take-part': 'takes-part', decline: 'declined', end: 'ended' } as const
const DECISIONS = { 'take-part': 'company-takes-part', decline: 'company-declined', end: 'company-left' } as const
const NOTHING: Sharing = { matrix: 'not-shared', shelf: 'not-shared', rates: 'not-shared' }

/**
 * Chooses what a project's team gets of the company's sheets. Recorded results show as stale until the revision is
 * evaluated again; what is no longer shared is left out of every view at once.
 */
export function setCompanySharing(actor: Actor, input: CompanySharingInput): Promise<ActResult<null>> {
  return write(actor, 'set-company-sharing', input, async ({ tx, rights, at, record }) => {
    const { company } = await requireCompany(tx, rights, input.companyId, 'company:share')
    const { projectId, matrix, shelf, rates } = input
    const columns = toSharingColumns({ matrix, shelf, rates })
    if (projectId === undefined) {
      await tx.company.update({ where: { id: company.id }, data: columns })
    } else {
      const part = await requirePart(tx, { ...input, projectId })
      if (part.state !== 'takes-part')
        refuseClash('The company does not take part in this project, so there is nothing to share.')
      await tx.participation.update({
        where: { id: part.id },
        data: { ...columns, sharingSetById: rights.userId, sharingSetAt: at, version: { increment: 1 } },
      })
    }
    await record({
      action: 'company-sharing-set',
      subject: { kind: 'company', id: company.id },
      ...(projectId === undefined ? {} : { projectId }),
      companyId: company.id,
      details: { company: company.name, matrix, shelf, rates },
    })
    return null
  })
}

async function requirePart(
  tx: TransactionClient,
  { companyId, projectId, seenVersion }: { companyId: string; projectId: string; seenVersion: number },
) {
  const part = await tx.participation.findUnique({ where: { companyId_projectId: { companyId, projectId } } })
  if (part === null) throw new NotFoundError('project of this company')
  if (part.version !== seenVersion) refuseStale(seenVersion, part.version, [], "the company's part in this project")
  return part
}

/** Brings one of the company's people into a project in which it takes part. */
export function bringToProject(actor: Actor, input: BringToProjectInput): Promise<ActResult<null>> {
  return write(actor, 'bring-to-project', input, async ({ tx, rights, at, record }) => {
    const { company } = await requireCompany(tx, rights, input.companyId, 'company:take-part')
    await requireTakesPart(tx, company.id, input.projectId)
    const { userId, projectId } = input
    const person = await tx.companyPerson.findUnique({
      where: { companyId_userId: { companyId: company.id, userId } },
      include: { user: { select: { name: true } } },
    })
    if (person === null) throw new NotFoundError('person of this company')
    const membership = await tx.membership.findUnique({ where: { userId_projectId: { userId, projectId } } })
    if (membership !== null) {
      if (membership.companyId === company.id && membership.role === 'fabricator') return null
      refuseField('userId', 'in-project', 'is already in this project, for another company')
    }
    await tx.membership.create({
      data: { userId, projectId, companyId: company.id, role: 'fabricator', createdAt: at },
    })
    await record({
      action: 'person-brought',
      subject: { kind: 'account', id: userId },
      projectId,
      companyId: company.id,
      details: { company: company.name, person: person.user.name },
    })
    return null
  })
}

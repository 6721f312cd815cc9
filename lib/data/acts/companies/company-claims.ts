import 'server-only'
import type { ConfirmCompanyInput } from '@/lib/inputs'
import { type WriteContext, write } from '../../consequences/write'
import { type Actor, requireInWorkspace } from '../../records/authorization'
import { WORKSPACE_SCOPE } from '../../records/names'
import type { TransactionClient } from '../../store/client'
import { NotFoundError, refuseClash, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'

/**
 * An admin says which company a typed name stands for. As a company of its own it becomes known to the workspace. As a
 * known one, its people become members of that company without a right over its sheets, what they did in the project
 * becomes the known company's, and the known company is asked whether it takes part: until it agrees nothing of it shows.
 */
export function confirmCompany(actor: Actor, input: ConfirmCompanyInput): Promise<ActResult<null>> {
  return write(actor, 'confirm-company', input, async (context) => {
    const { tx, rights, record } = context
    requireInWorkspace(rights, 'company:confirm')
    const company = await tx.company.findUnique({ where: { id: input.companyId } })
    if (company === null || company.kind !== 'fabricator') throw new NotFoundError('company')
    const { projectId } = company
    if (projectId === null) refuseClash('This company is already known to the workspace.')
    if (input.knownCompanyId === undefined) {
      const place = { scopeKey: WORKSPACE_SCOPE, nameKey: company.nameKey }
      if ((await tx.company.findUnique({ where: { scopeKey_nameKey: place } })) !== null) {
        refuseField('knownCompanyId', 'name-taken', 'must be chosen: a known company already has this name')
      }
      await tx.company.update({ where: { id: company.id }, data: { projectId: null, scopeKey: WORKSPACE_SCOPE } })
      await record({
        action: 'company-confirmed',
        subject: { kind: 'company', id: company.id },
        companyId: company.id,
        details: { company: company.name },
      })
      return null
    }
    const known = await tx.company.findUnique({ where: { id: input.knownCompanyId } })
    if (known === null || known.kind !== 'fabricator' || known.projectId !== null) {
      refuseField('knownCompanyId', 'unknown', 'is not a company that the workspace knows')
    }
    const isAsked = await moveInto(context, company.id, { ...known, projectId })
    await record({
      action: 'company-merged',
      subject: { kind: 'company', id: company.id },
      companyId: known.id,
      details: { company: company.name, into: known.name },
    })
    if (isAsked) {
      await record({
        action: 'company-asked',
        subject: { kind: 'company', id: known.id },
        projectId,
        companyId: known.id,
        details: { company: known.name, for: '' },
      })
    }
    return null
  })
}

/**
 * Its own sheets and limits stay behind with it: the known company has those that its people wrote.
 * @returns whether the known company is asked by this: the project had not asked it before
 */
async function moveInto(
  { tx, rights, at }: WriteContext,
  fromId: string,
  known: { readonly id: string; readonly projectId: string },
): Promise<boolean> {
  const people = await tx.companyPerson.findMany({ where: { companyId: fromId } })
  for (const { userId } of people) {
    const place = { companyId: known.id, userId }
    const fields = { role: 'member', admittedById: rights.userId, createdAt: at }
    await tx.companyPerson.upsert({
      where: { companyId_userId: place },
      create: { ...place, ...fields },
      update: {},
    })
  }
  await tx.companyPerson.deleteMany({ where: { companyId: fromId } })
  await moveShares(tx, fromId, known.id)
  const rows = { where: { companyId: fromId }, data: { companyId: known.id } }
  await tx.membership.updateMany(rows)
  await tx.edit.updateMany(rows)
  await tx.answer.updateMany(rows)
  await tx.answerHistory.updateMany(rows)
  await tx.attachment.updateMany(rows)
  await tx.comment.updateMany(rows)
  await tx.declaration.updateMany(rows)
  await tx.releaseExclusion.updateMany(rows)
  const audiences = { where: { audienceCompanyId: fromId }, data: { audienceCompanyId: known.id } }
  await tx.thread.updateMany(audiences)
  await tx.proposal.updateMany(audiences)
  await tx.thread.updateMany({ where: { openedByCompanyId: fromId }, data: { openedByCompanyId: known.id } })
  await tx.proposal.updateMany({ where: { proposedByCompanyId: fromId }, data: { proposedByCompanyId: known.id } })
  await movePackages(tx, fromId, known.id)
  await tx.invitation.updateMany({
    where: { companyId: fromId, usedAt: null, revokedAt: null },
    data: { revokedAt: at },
  })
  const part = { companyId: known.id, projectId: known.projectId }
  const isAsked = (await tx.participation.findUnique({ where: { companyId_projectId: part } })) === null
  if (isAsked) {
    await tx.participation.create({ data: { ...part, state: 'asked', askedById: rights.userId, askedAt: at } })
  }
  await tx.participation.deleteMany({ where: { companyId: fromId } })
  await tx.company.update({
    where: { id: fromId },
    data: { mergedIntoId: known.id, scopeKey: `merged/${fromId}` },
  })
  return isAsked
}

async function moveShares(tx: TransactionClient, fromId: string, toId: string): Promise<void> {
  const shares = await tx.revisionShare.findMany({ where: { companyId: fromId } })
  for (const { id, revisionId } of shares) {
    const place = { revisionId_companyId: { revisionId, companyId: toId } }
    if ((await tx.revisionShare.findUnique({ where: place })) === null) {
      await tx.revisionShare.update({ where: { id }, data: { companyId: toId } })
    } else {
      await tx.revisionShare.delete({ where: { id } })
    }
  }
}

async function movePackages(tx: TransactionClient, fromId: string, toId: string): Promise<void> {
  const packages = await tx.package.findMany({ where: { audience: fromId } })
  for (const { id, revisionId } of packages) {
    const place = { revisionId_audience: { revisionId, audience: toId } }
    // Where the known company got an edition of its own, the other one stays on record under the old company.
    if ((await tx.package.findUnique({ where: place })) === null) {
      await tx.package.update({ where: { id }, data: { audience: toId } })
    }
  }
}

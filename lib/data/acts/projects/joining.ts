import 'server-only'
import { now } from '@/lib/config'
import type { AcceptInvitationInput, JoinByInvitationInput } from '@/lib/inputs'
import { appendToTrail } from '../../consequences/trail'
import { inWriteTransaction, write } from '../../consequences/write'
import { getState, INVITATION_PARTS, type InvitationRow } from '../../reads/invitations'
import { type Actor, getMembership, type PersonRights } from '../../records/authorization'
import { hashToken } from '../../records/invitation-token'
import { requireNoLookAlike } from '../../records/look-alikes'
import { requireGoodPassword } from '../../records/password-rules'
import { hashPassword } from '../../records/passwords'
import { readRole } from '../../records/stored-words'
import { OWN_VISIT, type Visit } from '../../records/visit'
import { db, type TransactionClient } from '../../store/client'
import { NotFoundError, outcomeOf, RefusalError, refuseClash, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'
import { isEnteredByInvitation } from './invitations'

/** By somebody without an account: creates it and joins. */
export async function acceptInvitation(
  input: AcceptInvitationInput,
  visit: Visit = OWN_VISIT,
): Promise<ActResult<{ userId: string; projectId: string | null }>> {
  // A worthless link or password must not cost a hash.
  const hashed = await outcomeOf(async () => {
    requireOpen(await findByToken(db(), input.token), now())
    requireGoodPassword('password', input.password, input)
    return hashPassword(input.password, { sourceKey: visit.sourceKey })
  })
  if (!hashed.ok) return hashed
  const passwordHash = hashed.value
  const joined = await outcomeOf(() =>
    inWriteTransaction(async (tx) => {
      const at = now()
      const invitation = requireOpen(await findByToken(tx, input.token), at)
      requireAddress(invitation, input.email)
      if (!(await mayEnter(tx, invitation))) {
        return turnAway(tx, at, { userId: null, name: `${input.name} (${input.email})` }, invitation)
      }
      if ((await tx.user.findUnique({ where: { email: input.email } })) !== null) {
        refuseField('email', 'taken', 'already has an account; sign in first, then open the link again')
      }
      if (invitation.email === null) await requireNoLookAlike(tx, input.email)
      const user = await tx.user.create({
        data: { email: input.email, name: input.name, passwordHash, createdAt: at },
      })
      await join(tx, at, { userId: user.id, name: user.name }, invitation)
      return { userId: user.id, projectId: invitation.projectId }
    }),
  )
  return refuseTurnedAway(joined)
}

/** By somebody who is signed in: joins with the account they have. */
export async function joinByInvitation(
  actor: Actor,
  input: JoinByInvitationInput,
): Promise<ActResult<{ projectId: string | null }>> {
  const joined = await write(actor, 'join-by-invitation', {}, async ({ tx, rights, at }) => {
    const found = await findByToken(tx, input.token)
    // The second click of a double click: the first one already did it.
    if (found.usedById === rights.userId) return { projectId: found.projectId }
    const invitation = requireOpen(found, at)
    const user = await tx.user.findUniqueOrThrow({ where: { id: rights.userId } })
    requireAddress(invitation, user.email)
    if (!(await mayEnter(tx, invitation))) return turnAway(tx, at, rights, invitation)
    if (invitation.projectId !== null && getMembership(rights, invitation.projectId) !== null) {
      refuseClash('You are already in this project; the invitation is still unused.')
    }
    if (invitation.projectId === null && rights.companies.some(({ companyId }) => companyId === invitation.companyId)) {
      refuseClash('You already belong to this company; the invitation is still unused.')
    }
    await join(tx, at, rights, invitation)
    return { projectId: invitation.projectId }
  })
  return refuseTurnedAway(joined)
}

/** What stays in the database though the person is refused: the trail's record of it, and that the link is spent. */
interface TurnedAway {
  readonly turnedAway: string
}

/**
 * May the holder of this link become one of the company's people? Where the company, or an admin, made the link, and where
 * it is the first one into a company of the project alone. Links of earlier versions, made by a lead for a known company,
 * are none of these.
 */
async function mayEnter(tx: TransactionClient, { role, company, companyRole }: InvitationRow): Promise<boolean> {
  return role !== 'fabricator' || companyRole !== null || isEnteredByInvitation(tx, company)
}

async function turnAway(
  tx: TransactionClient,
  at: Date,
  person: { readonly userId: string | null; readonly name: string },
  invitation: InvitationRow,
): Promise<TurnedAway> {
  await tx.invitation.update({ where: { id: invitation.id }, data: { revokedAt: at } })
  await appendToTrail(tx, at, person, {
    action: 'company-entry-refused',
    subject: { kind: 'invitation', id: invitation.id },
    ...(invitation.projectId === null ? {} : { projectId: invitation.projectId }),
    companyId: invitation.companyId,
    details: { company: invitation.company.name },
  })
  return { turnedAway: invitation.company.name }
}

function refuseTurnedAway<T extends object>(result: ActResult<T | TurnedAway>): Promise<ActResult<T>> {
  return outcomeOf(async () => {
    if (!result.ok) throw new RefusalError(result.refusal)
    const { value } = result
    if ('turnedAway' in value) {
      refuseClash(
        `Nobody joins ${value.turnedAway} by a project's invitation: an administrator of the company must admit you.`,
      )
    }
    return value as T
  })
}

async function findByToken(tx: Pick<TransactionClient, 'invitation'>, token: string): Promise<InvitationRow> {
  const invitation = await tx.invitation.findUnique({
    where: { tokenHash: hashToken(token) },
    include: INVITATION_PARTS,
  })
  if (invitation === null) throw new NotFoundError('invitation')
  return invitation
}

function requireOpen(invitation: InvitationRow, at: Date): InvitationRow {
  switch (getState(invitation, at)) {
    case 'used':
      refuseClash('This invitation was already used. Ask for a new one.')
      break
    case 'revoked':
      refuseClash('This invitation was withdrawn. Ask for a new one.')
      break
    case 'expired':
      refuseClash(`This invitation expired on ${invitation.expiresAt.toISOString().slice(0, 10)}. Ask for a new one.`)
      break
    case 'open':
  }
  return invitation
}

function requireAddress(invitation: InvitationRow, email: string): void {
  if (invitation.email !== null && invitation.email !== email) {
    refuseField('email', 'other-address', 'is not the address that the invitation was made for')
  }
}

async function join(
  tx: TransactionClient,
  at: Date,
  person: Pick<PersonRights, 'userId' | 'name'>,
  invitation: InvitationRow,
): Promise<void> {
  await tx.invitation.update({ where: { id: invitation.id }, data: { usedAt: at, usedById: person.userId } })
  if (invitation.role === 'fabricator') await enterCompany(tx, at, person, invitation)
  if (invitation.projectId === null) return
  await tx.membership.create({
    data: {
      userId: person.userId,
      projectId: invitation.projectId,
      companyId: invitation.companyId,
      role: readRole(invitation.role),
      createdAt: at,
    },
  })
  await appendToTrail(tx, at, person, {
    action: 'person-joined',
    subject: { kind: 'account', id: person.userId },
    projectId: invitation.projectId,
    companyId: invitation.role === 'fabricator' ? invitation.companyId : null,
    details: { role: invitation.role, company: invitation.company.name, invitation: invitation.id },
  })
}

/** Somebody who belongs to the company already keeps the role that they have. */
async function enterCompany(
  tx: TransactionClient,
  at: Date,
  person: Pick<PersonRights, 'userId' | 'name'>,
  { companyId, companyRole, company, projectId, createdById }: InvitationRow,
): Promise<void> {
  const place = { companyId, userId: person.userId }
  if ((await tx.companyPerson.findUnique({ where: { companyId_userId: place } })) !== null) return
  const role = companyRole ?? 'administrator'
  await tx.companyPerson.create({ data: { ...place, role, admittedById: createdById, createdAt: at } })
  await appendToTrail(tx, at, person, {
    action: 'company-person-joined',
    subject: { kind: 'account', id: person.userId },
    companyId,
    details: { role, company: company.name },
  })
  // Anyone who enters a company of the project alone as its first administrator agrees by that to take part; it shows nothing.
  if (companyRole === null && projectId !== null) {
    await tx.participation.update({
      where: { companyId_projectId: { companyId, projectId } },
      data: { state: 'takes-part', decidedById: person.userId, decidedAt: at, version: { increment: 1 } },
    })
  }
}

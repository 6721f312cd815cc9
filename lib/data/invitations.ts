import 'server-only'
import { getSettings, now } from '@/lib/config'
import type { AcceptInvitationInput, InvitationInput, JoinByInvitationInput, RevokeInvitationInput } from '@/lib/inputs'
import { composeMail, TOKEN_PLACE } from '@/lib/mail'
import { type Actor, getMembership, requireProject, type Standing } from './authorization'
import { db, type TransactionClient } from './client'
import { NotFoundError, outcomeOf, refuseClash, refuseField } from './errors'
import type { Prisma } from './generated/sqlite/client'
import { deriveToken, hashToken, makeTokenSeed } from './invitation-token'
import { foldName } from './names'
import { queueMail } from './outbox'
import { hashPassword } from './passwords'
import { loadWorkspace } from './settings-record'
import { readRole } from './snapshot'
import { appendToTrail } from './trail'
import type { CreatedInvitation, InvitationView, Outcome } from './views'
import { inWriteTransaction, type WriteContext, write } from './write'

const DAY_MS = 86_400_000

/**
 * Invites one person to one project, for one company. Single-use, expires, kept only as a hash: the raw token is in the
 * answer and nowhere else.
 */
export function createInvitation(actor: Actor, input: InvitationInput): Promise<Outcome<CreatedInvitation>> {
  const seed = makeTokenSeed(actor.userId, input.requestKey)
  const token = deriveToken(seed)
  const withLink = (invitation: InvitationView): CreatedInvitation => ({
    invitation,
    token,
    link: makeLink(token),
  })
  return write(
    actor,
    'create-invitation',
    input,
    async (context) => {
      const { tx, standing, at, record } = context
      const project = await requireProject(tx, standing, input.projectId, 'project:invite')
      const company = await findCompanyFor(context, project.id, input)
      const { settings } = await loadWorkspace(tx)
      const invitation = await tx.invitation.create({
        data: {
          tokenHash: hashToken(token),
          email: input.email ?? null,
          role: input.role,
          projectId: project.id,
          companyId: company.id,
          createdById: standing.userId,
          createdAt: at,
          expiresAt: new Date(at.getTime() + settings.invitationDays * DAY_MS),
        },
        include: INVITATION_PARTS,
      })
      await record({
        action: 'person-invited',
        subject: { kind: 'invitation', id: invitation.id },
        projectId: project.id,
        companyId: input.role === 'fabricator' ? company.id : null,
        details: { role: input.role, company: company.name, expiresAt: invitation.expiresAt.toISOString() },
      })
      if (input.email !== undefined) await queueInvitation(context, invitation, seed)
      return withLink(toInvitationView(invitation, at))
    },
    {
      keep: ({ invitation }) => invitation,
      revive: (kept) => withLink(kept as InvitationView),
    },
  )
}

function makeLink(token: string): string {
  return `${getSettings().publicUrl}/invitation/${token}`
}

async function queueInvitation({ tx, standing, at }: WriteContext, invitation: InvitationRow, tokenSeed: string) {
  await queueMail(tx, at, {
    kind: 'invitation',
    dedupeKey: `invitation:${invitation.id}`,
    recipient: { userId: null, name: '', address: invitation.email ?? '' },
    tokenSeed,
    text: composeMail({
      kind: 'invitation',
      projectName: invitation.project.name,
      companyName: invitation.company.name,
      role: invitation.role,
      invitedBy: standing.name,
      href: makeLink(TOKEN_PLACE),
      expiresOn: invitation.expiresAt.toISOString().slice(0, 10),
    }),
  })
}

/** The team's people join for the company of the lead who invites them; a fabricator's for the company that is named. */
async function findCompanyFor({ tx, standing, at }: WriteContext, projectId: string, input: InvitationInput) {
  if (input.role !== 'fabricator') {
    const membership = getMembership(standing, projectId)
    if (membership === null) throw new NotFoundError('project')
    return tx.company.findUniqueOrThrow({ where: { id: membership.companyId } })
  }
  const name = input.companyName ?? ''
  const nameKey = foldName(name)
  const existing = await tx.company.findUnique({ where: { nameKey } })
  if (existing === null) {
    return tx.company.create({ data: { kind: 'fabricator', name, nameKey, createdAt: at } })
  }
  if (existing.kind !== 'fabricator')
    refuseField('companyName', 'not-a-fabricator', `"${name}" is the team's own company`)
  return existing
}

export function revokeInvitation(actor: Actor, input: RevokeInvitationInput): Promise<Outcome<null>> {
  return write(actor, 'revoke-invitation', input, async ({ tx, standing, at, record }) => {
    const invitation = await tx.invitation.findUnique({ where: { id: input.invitationId } })
    if (invitation === null || getMembership(standing, invitation.projectId) === null) {
      throw new NotFoundError('invitation')
    }
    await requireProject(tx, standing, invitation.projectId, 'project:invite')
    if (invitation.usedAt !== null) refuseClash('The invitation was already used; remove the person instead.')
    if (invitation.revokedAt !== null) return null
    await tx.invitation.update({ where: { id: invitation.id }, data: { revokedAt: at } })
    await record({
      action: 'invitation-revoked',
      subject: { kind: 'invitation', id: invitation.id },
      projectId: invitation.projectId,
      companyId: invitation.role === 'fabricator' ? invitation.companyId : null,
    })
    return null
  })
}

/**
 * What a link offers, for whoever holds it.
 * @throws NotFoundError for a token that was never given out
 */
export async function previewInvitation(token: string): Promise<InvitationView> {
  const invitation = await db().invitation.findUnique({
    where: { tokenHash: hashToken(token) },
    include: INVITATION_PARTS,
  })
  if (invitation === null) throw new NotFoundError('invitation')
  return toInvitationView(invitation, now())
}

/** By somebody without an account: creates it and joins. */
export async function acceptInvitation(
  input: AcceptInvitationInput,
): Promise<Outcome<{ userId: string; projectId: string }>> {
  // A worthless link must not cost a hash.
  const offered = await outcomeOf(async () => {
    requireOpen(await findByToken(db(), input.token), now())
  })
  if (!offered.ok) return offered
  const passwordHash = await hashPassword(input.password)
  return outcomeOf(() =>
    inWriteTransaction(async (tx) => {
      const at = now()
      const invitation = requireOpen(await findByToken(tx, input.token), at)
      requireAddress(invitation, input.email)
      if ((await tx.user.findUnique({ where: { email: input.email } })) !== null) {
        refuseField('email', 'taken', 'already has an account; sign in first, then open the link again')
      }
      const user = await tx.user.create({
        data: { email: input.email, name: input.name, passwordHash, createdAt: at },
      })
      await join(tx, at, { userId: user.id, name: user.name }, invitation)
      return { userId: user.id, projectId: invitation.projectId }
    }),
  )
}

/** By somebody who is signed in: joins with the account they have. */
export function joinByInvitation(actor: Actor, input: JoinByInvitationInput): Promise<Outcome<{ projectId: string }>> {
  return write(actor, 'join-by-invitation', {}, async ({ tx, standing, at }) => {
    const found = await findByToken(tx, input.token)
    // The second click of a double click: the first one already did it.
    if (found.usedById === standing.userId) return { projectId: found.projectId }
    const invitation = requireOpen(found, at)
    const user = await tx.user.findUniqueOrThrow({ where: { id: standing.userId } })
    requireAddress(invitation, user.email)
    if (getMembership(standing, invitation.projectId) !== null) {
      refuseClash('You are in this project already; the invitation is still unused.')
    }
    await join(tx, at, standing, invitation)
    return { projectId: invitation.projectId }
  })
}

const INVITATION_PARTS = { project: true, company: true } as const satisfies Prisma.InvitationInclude
type InvitationRow = Prisma.InvitationGetPayload<{ include: typeof INVITATION_PARTS }>

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
  person: Pick<Standing, 'userId' | 'name'>,
  invitation: InvitationRow,
): Promise<void> {
  await tx.invitation.update({ where: { id: invitation.id }, data: { usedAt: at, usedById: person.userId } })
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

function getState(
  invitation: Pick<InvitationRow, 'usedAt' | 'revokedAt' | 'expiresAt'>,
  at: Date,
): InvitationView['state'] {
  if (invitation.usedAt !== null) return 'used'
  if (invitation.revokedAt !== null) return 'revoked'
  return invitation.expiresAt <= at ? 'expired' : 'open'
}

export function toInvitationView(invitation: InvitationRow, at: Date): InvitationView {
  return {
    id: invitation.id,
    projectId: invitation.projectId,
    projectName: invitation.project.name,
    role: readRole(invitation.role),
    companyName: invitation.company.name,
    email: invitation.email,
    state: getState(invitation, at),
    createdAt: invitation.createdAt.toISOString(),
    expiresAt: invitation.expiresAt.toISOString(),
  }
}

import 'server-only'
import { getSettings, now } from '@/lib/config'
import type {
  AcceptInvitationInput,
  CompanyInvitationInput,
  InvitationInput,
  JoinByInvitationInput,
  RevokeInvitationInput,
} from '@/lib/inputs'
import { composeMail, TOKEN_PLACE } from '@/lib/mail'
import {
  type Actor,
  describeAct,
  getMembership,
  isCompanyRole,
  requireCompany,
  requireProject,
  type Standing,
} from './authorization'
import { db, type TransactionClient } from './client'
import { NotAllowedError, NotFoundError, outcomeOf, RefusalError, refuseClash, refuseField } from './errors'
import type { Prisma } from './generated/sqlite/client'
import { deriveToken, hashToken, makeTokenSeed } from './invitation-token'
import { requireNoLookAlike } from './look-alikes'
import { foldName, WORKSPACE_SCOPE } from './names'
import { queueMail } from './outbox'
import { askCompany, requireTakesPart } from './participation-record'
import { requireGoodPassword } from './password-rules'
import { hashPassword } from './passwords'
import { loadWorkspace } from './settings-record'
import { readRole } from './snapshot'
import { appendToTrail } from './trail'
import type { AskedCompany, CreatedInvitation, InvitationView, Outcome } from './views'
import { OWN_VISIT, type Visit } from './visit'
import { inWriteTransaction, type WriteContext, write } from './write'

const DAY_MS = 86_400_000

/**
 * Invites one person to one project, for one company. Single-use, expires, kept only as a hash: the raw token is in the
 * answer and nowhere else.
 *
 * A fabricator that has people of its own is not entered by typing its name: it is asked instead, and nobody joins until
 * an administrator of it says who. A name that nobody knows makes a company of this project alone.
 */
export function createInvitation(
  actor: Actor,
  input: InvitationInput & { readonly role: 'lead' | 'member' | 'observer' },
): Promise<Outcome<CreatedInvitation>>
export function createInvitation(
  actor: Actor,
  input: InvitationInput,
): Promise<Outcome<CreatedInvitation | AskedCompany>>
export function createInvitation(
  actor: Actor,
  input: InvitationInput,
): Promise<Outcome<CreatedInvitation | AskedCompany>> {
  const seed = makeTokenSeed(actor.userId, input.requestKey)
  const token = deriveToken(seed)
  const withLink = (invitation: InvitationView): CreatedInvitation => ({
    isAsked: false,
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
      if (input.role === 'fabricator' && !(await isEnteredByInvitation(tx, company))) {
        return askCompany(context, company, { projectId: project.id, email: input.email ?? '' })
      }
      const invitation = await storeInvitation(context, seed, {
        email: input.email ?? null,
        role: input.role,
        projectId: project.id,
        companyId: company.id,
        companyRole: null,
      })
      await record({
        action: 'person-invited',
        subject: { kind: 'invitation', id: invitation.id },
        projectId: project.id,
        companyId: input.role === 'fabricator' ? company.id : null,
        details: { role: input.role, company: company.name, expiresAt: invitation.expiresAt.toISOString() },
      })
      return withLink(toInvitationView(invitation, at))
    },
    {
      keep: (value) => (value.isAsked ? value : value.invitation),
      revive: (kept) =>
        (kept as AskedCompany).isAsked === true ? (kept as AskedCompany) : withLink(kept as InvitationView),
    },
  )
}

/** Admits somebody to a company, and where it is named to one of its projects: by one of its administrators or by an admin. */
export function inviteToCompany(actor: Actor, input: CompanyInvitationInput): Promise<Outcome<CreatedInvitation>> {
  const seed = makeTokenSeed(actor.userId, input.requestKey)
  const token = deriveToken(seed)
  const withLink = (invitation: InvitationView): CreatedInvitation => ({
    isAsked: false,
    invitation,
    token,
    link: makeLink(token),
  })
  return write(
    actor,
    'invite-to-company',
    input,
    async (context) => {
      const { tx, standing, at, record } = context
      const { company, may } = await requireCompany(tx, standing, input.companyId, 'company:admit')
      if (input.projectId !== undefined) {
        if (!may('company:take-part')) throw new NotAllowedError(describeAct('company:take-part'))
        await requireTakesPart(tx, company.id, input.projectId)
      }
      const invitation = await storeInvitation(context, seed, {
        email: input.email ?? null,
        role: 'fabricator',
        projectId: input.projectId ?? null,
        companyId: company.id,
        companyRole: input.role,
      })
      await record({
        action: 'company-person-invited',
        subject: { kind: 'invitation', id: invitation.id },
        companyId: company.id,
        details: { role: input.role, company: company.name, expiresAt: invitation.expiresAt.toISOString() },
      })
      return withLink(toInvitationView(invitation, at))
    },
    { keep: ({ invitation }) => invitation, revive: (kept) => withLink(kept as InvitationView) },
  )
}

async function storeInvitation(
  context: WriteContext,
  seed: string,
  fields: Pick<InvitationRow, 'email' | 'role' | 'projectId' | 'companyId' | 'companyRole'>,
): Promise<InvitationRow> {
  const { tx, standing, at } = context
  const { settings } = await loadWorkspace(tx)
  const invitation = await tx.invitation.create({
    data: {
      ...fields,
      tokenHash: hashToken(deriveToken(seed)),
      createdById: standing.userId,
      createdAt: at,
      expiresAt: new Date(at.getTime() + settings.invitationDays * DAY_MS),
    },
    include: INVITATION_PARTS,
  })
  if (fields.email !== null) await queueInvitation(context, invitation, seed)
  return invitation
}

function makeLink(token: string): string {
  return `${getSettings().publicUrl}/invitation/${token}`
}

async function queueInvitation({ tx, standing, at }: WriteContext, invitation: InvitationRow, tokenSeed: string) {
  const { email } = await tx.user.findUniqueOrThrow({ where: { id: standing.userId }, select: { email: true } })
  await queueMail(tx, at, {
    kind: 'invitation',
    dedupeKey: `invitation:${invitation.id}`,
    recipient: { userId: null, name: '', address: invitation.email ?? '' },
    // Whoever wonders about the invitation asks the person who sent it.
    replyTo: { name: standing.name, address: email },
    tokenSeed,
    text: composeMail({
      kind: 'invitation',
      projectName: invitation.project?.name ?? null,
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
  const known = await findCompanyByName(tx, WORKSPACE_SCOPE, nameKey)
  if (known !== null && known.kind !== 'fabricator') {
    refuseField('companyName', 'not-a-fabricator', `"${name}" is the team's own company`)
  }
  if (known !== null) return known
  const ownName = await findCompanyByName(tx, projectId, nameKey)
  if (ownName !== null) return ownName
  const company = await tx.company.create({
    data: { kind: 'fabricator', name, nameKey, scopeKey: projectId, projectId, createdAt: at },
  })
  await tx.participation.create({
    data: { companyId: company.id, projectId, state: 'asked', askedById: standing.userId, askedAt: at },
  })
  return company
}

function findCompanyByName(tx: TransactionClient, scopeKey: string, nameKey: string) {
  return tx.company.findUnique({ where: { scopeKey_nameKey: { scopeKey, nameKey } } })
}

/** A company of one project alone, in which there is nobody yet: whoever takes the first invitation becomes its administrator. */
async function isEnteredByInvitation(
  tx: Pick<TransactionClient, 'companyPerson'>,
  company: { readonly id: string; readonly projectId: string | null },
): Promise<boolean> {
  return company.projectId !== null && (await tx.companyPerson.count({ where: { companyId: company.id } })) === 0
}

export function revokeInvitation(actor: Actor, input: RevokeInvitationInput): Promise<Outcome<null>> {
  return write(actor, 'revoke-invitation', input, async ({ tx, standing, at, record }) => {
    const invitation = await tx.invitation.findUnique({ where: { id: input.invitationId } })
    if (invitation === null) throw new NotFoundError('invitation')
    await requireInviter(tx, standing, invitation)
    if (invitation.usedAt !== null) refuseClash('The invitation was already used; remove the person instead.')
    if (invitation.revokedAt !== null) return null
    await tx.invitation.update({ where: { id: invitation.id }, data: { revokedAt: at } })
    await record({
      action: 'invitation-revoked',
      subject: { kind: 'invitation', id: invitation.id },
      ...(invitation.projectId === null ? {} : { projectId: invitation.projectId }),
      companyId: invitation.role === 'fabricator' ? invitation.companyId : null,
    })
    return null
  })
}

/** Whose it is to take an invitation back: the company's that admits by it, else the project's. */
async function requireInviter(
  tx: TransactionClient,
  standing: Standing,
  { projectId, companyId, companyRole }: Pick<InvitationRow, 'projectId' | 'companyId' | 'companyRole'>,
): Promise<void> {
  if (companyRole !== null) {
    await outsidersFindNothing('invitation', () => requireCompany(tx, standing, companyId, 'company:admit'))
    return
  }
  if (projectId === null || getMembership(standing, projectId) === null) throw new NotFoundError('invitation')
  await requireProject(tx, standing, projectId, 'project:invite')
}

async function outsidersFindNothing(subject: string, run: () => Promise<unknown>): Promise<void> {
  try {
    await run()
  } catch (error) {
    if (error instanceof NotFoundError) throw new NotFoundError(subject)
    throw error
  }
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
  visit: Visit = OWN_VISIT,
): Promise<Outcome<{ userId: string; projectId: string | null }>> {
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
): Promise<Outcome<{ projectId: string | null }>> {
  const joined = await write(actor, 'join-by-invitation', {}, async ({ tx, standing, at }) => {
    const found = await findByToken(tx, input.token)
    // The second click of a double click: the first one already did it.
    if (found.usedById === standing.userId) return { projectId: found.projectId }
    const invitation = requireOpen(found, at)
    const user = await tx.user.findUniqueOrThrow({ where: { id: standing.userId } })
    requireAddress(invitation, user.email)
    if (!(await mayEnter(tx, invitation))) return turnAway(tx, at, standing, invitation)
    if (invitation.projectId !== null && getMembership(standing, invitation.projectId) !== null) {
      refuseClash('You are in this project already; the invitation is still unused.')
    }
    if (
      invitation.projectId === null &&
      standing.companies.some(({ companyId }) => companyId === invitation.companyId)
    ) {
      refuseClash('You belong to this company already; the invitation is still unused.')
    }
    await join(tx, at, standing, invitation)
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

function refuseTurnedAway<T extends object>(outcome: Outcome<T | TurnedAway>): Promise<Outcome<T>> {
  return outcomeOf(async () => {
    if (!outcome.ok) throw new RefusalError(outcome.refusal)
    const { value } = outcome
    if ('turnedAway' in value) {
      refuseClash(
        `Nobody joins ${value.turnedAway} by a project's invitation: an administrator of the company must admit you.`,
      )
    }
    return value as T
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
  person: Pick<Standing, 'userId' | 'name'>,
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
  // Whoever enters a company of the project alone as its first administrator agrees by that to take part; it shows nothing.
  if (companyRole === null && projectId !== null) {
    await tx.participation.update({
      where: { companyId_projectId: { companyId, projectId } },
      data: { state: 'takes-part', decidedById: person.userId, decidedAt: at, version: { increment: 1 } },
    })
  }
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
    projectName: invitation.project?.name ?? null,
    role: readRole(invitation.role),
    companyId: invitation.companyId,
    companyRole:
      invitation.companyRole !== null && isCompanyRole(invitation.companyRole) ? invitation.companyRole : null,
    companyName: invitation.company.name,
    email: invitation.email,
    state: getState(invitation, at),
    createdAt: invitation.createdAt.toISOString(),
    expiresAt: invitation.expiresAt.toISOString(),
  }
}

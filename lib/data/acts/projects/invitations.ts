import 'server-only'
import { paths } from '@/lib/addresses'
import { getSettings } from '@/lib/config'
import type { CompanyInvitationInput, InvitationInput, RevokeInvitationInput } from '@/lib/inputs'
import { composeMail, TOKEN_PLACE } from '@/lib/mail'
import { describeAct, type OwnRole } from '@/lib/review'
import { type WriteContext, write } from '../../consequences/write'
import { INVITATION_PARTS, type InvitationRow, toInvitationView } from '../../reads/invitations'
import {
  type Actor,
  getMembership,
  type PersonRights,
  requireCompany,
  requireProject,
} from '../../records/authorization'
import { deriveToken, hashToken, makeTokenSeed } from '../../records/invitation-token'
import { foldName, WORKSPACE_SCOPE } from '../../records/names'
import { queueMail } from '../../records/outbox'
import { requireTakesPart } from '../../records/participation-record'
import { loadWorkspace } from '../../records/settings-record'
import type { TransactionClient } from '../../store/client'
import { NotAllowedError, NotFoundError, refuseClash, refuseField } from '../../store/errors'
import type { ActResult, AskedCompany, CreatedInvitation, InvitationView } from '../../views'
import { askCompany } from '../companies/asked-companies'

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
  input: InvitationInput & { readonly role: OwnRole },
): Promise<ActResult<CreatedInvitation>>
export function createInvitation(
  actor: Actor,
  input: InvitationInput,
): Promise<ActResult<CreatedInvitation | AskedCompany>>
export function createInvitation(
  actor: Actor,
  input: InvitationInput,
): Promise<ActResult<CreatedInvitation | AskedCompany>> {
  const { seed, withLink } = makeInvitationLink(actor, input.requestKey)
  return write(
    actor,
    'create-invitation',
    input,
    async (context) => {
      const { tx, rights, at, record } = context
      const project = await requireProject(tx, rights, input.projectId, 'project:invite')
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

/** The same request has the same link: sent twice, it answers as it did before. */
function makeInvitationLink(actor: Actor, requestKey: string | undefined) {
  const seed = makeTokenSeed(actor.userId, requestKey)
  const token = deriveToken(seed)
  const withLink = (invitation: InvitationView): CreatedInvitation => ({
    isAsked: false,
    invitation,
    token,
    link: makeLink(token),
  })
  return { seed, withLink }
}

/** Admits somebody to a company, and where it is named to one of its projects: by one of its administrators or by an admin. */
export function inviteToCompany(actor: Actor, input: CompanyInvitationInput): Promise<ActResult<CreatedInvitation>> {
  const { seed, withLink } = makeInvitationLink(actor, input.requestKey)
  return write(
    actor,
    'invite-to-company',
    input,
    async (context) => {
      const { tx, rights, at, record } = context
      const { company, may } = await requireCompany(tx, rights, input.companyId, 'company:admit')
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
  const { tx, rights, at } = context
  const { settings } = await loadWorkspace(tx)
  const invitation = await tx.invitation.create({
    data: {
      ...fields,
      tokenHash: hashToken(deriveToken(seed)),
      createdById: rights.userId,
      createdAt: at,
      expiresAt: new Date(at.getTime() + settings.invitationDays * DAY_MS),
    },
    include: INVITATION_PARTS,
  })
  if (fields.email !== null) await queueInvitation(context, invitation, seed)
  return invitation
}

function makeLink(token: string): string {
  return `${getSettings().publicUrl}${paths.invitation('')}${token}`
}

async function queueInvitation({ tx, rights, at }: WriteContext, invitation: InvitationRow, tokenSeed: string) {
  const { email } = await tx.user.findUniqueOrThrow({ where: { id: rights.userId }, select: { email: true } })
  await queueMail(tx, at, {
    kind: 'invitation',
    dedupeKey: `invitation:${invitation.id}`,
    recipient: { userId: null, name: '', address: invitation.email ?? '' },
    // Anyone who wonders about the invitation asks the person who sent it.
    replyTo: { name: rights.name, address: email },
    tokenSeed,
    text: composeMail({
      kind: 'invitation',
      projectName: invitation.project?.name ?? null,
      companyName: invitation.company.name,
      role: invitation.role,
      invitedBy: rights.name,
      href: makeLink(TOKEN_PLACE),
      expiresOn: invitation.expiresAt.toISOString().slice(0, 10),
    }),
  })
}

/** The team's people join for the company of the lead who invites them; a fabricator's for the company that is named. */
async function findCompanyFor({ tx, rights, at }: WriteContext, projectId: string, input: InvitationInput) {
  if (input.role !== 'fabricator') {
    const membership = getMembership(rights, projectId)
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
    data: { companyId: company.id, projectId, state: 'asked', askedById: rights.userId, askedAt: at },
  })
  return company
}

function findCompanyByName(tx: TransactionClient, scopeKey: string, nameKey: string) {
  return tx.company.findUnique({ where: { scopeKey_nameKey: { scopeKey, nameKey } } })
}

/** A company of one project alone, in which there is nobody yet: the person who takes the first invitation becomes its administrator. */
export async function isEnteredByInvitation(
  tx: Pick<TransactionClient, 'companyPerson'>,
  company: { readonly id: string; readonly projectId: string | null },
): Promise<boolean> {
  return company.projectId !== null && (await tx.companyPerson.count({ where: { companyId: company.id } })) === 0
}

export function revokeInvitation(actor: Actor, input: RevokeInvitationInput): Promise<ActResult<null>> {
  return write(actor, 'revoke-invitation', input, async ({ tx, rights, at, record }) => {
    const invitation = await tx.invitation.findUnique({ where: { id: input.invitationId } })
    if (invitation === null) throw new NotFoundError('invitation')
    await requireInviter(tx, rights, invitation)
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
  rights: PersonRights,
  { projectId, companyId, companyRole }: Pick<InvitationRow, 'projectId' | 'companyId' | 'companyRole'>,
): Promise<void> {
  if (companyRole !== null) {
    await outsidersFindNothing('invitation', () => requireCompany(tx, rights, companyId, 'company:admit'))
    return
  }
  if (projectId === null || getMembership(rights, projectId) === null) throw new NotFoundError('invitation')
  await requireProject(tx, rights, projectId, 'project:invite')
}

async function outsidersFindNothing(subject: string, run: () => Promise<unknown>): Promise<void> {
  try {
    await run()
  } catch (error) {
    if (error instanceof NotFoundError) throw new NotFoundError(subject)
    throw error
  }
}
